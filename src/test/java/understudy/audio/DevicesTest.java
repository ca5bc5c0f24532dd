package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import understudy.refusal.Refused;

class DevicesTest {

    private static Device named(String name, String description, int ordinal) {
        return new Device(name, description, "", Device.Direction.OUTPUT, ordinal, false);
    }

    private static final List<Device> DEVICES = List.of(
            named("default [default]", "Direct Audio Device: default", 1),
            named("Stick [plughw:1,0]", "USB Audio", 1),
            named("Stick [plughw:1,0]", "USB Audio", 2),
            named("Dock [plughw:2,0]", "USB Audio", 1));

    @Test
    void findsADeviceByItsNameOrAnyPartOnlyItHas() {
        assertThat(Devices.match("Dock [plughw:2,0]", DEVICES, "output")).isEqualTo(DEVICES.get(3));
        assertThat(Devices.match("dock", DEVICES, "output")).isEqualTo(DEVICES.get(3));
        assertThat(Devices.match("direct audio", DEVICES, "output")).isEqualTo(DEVICES.get(0));
        assertThat(Devices.match("Stick [plughw:1,0] #2", DEVICES, "output")).isEqualTo(DEVICES.get(2));
        assertThat(Devices.match("stick [plughw:1,0] #1", DEVICES, "output")).isEqualTo(DEVICES.get(1));
    }

    @Test
    void anAmbiguousNameListsTheCandidates() {
        assertThatThrownBy(() -> Devices.match("stick", DEVICES, "output"))
                .isInstanceOf(Refused.class)
                .hasMessage("\"stick\" fits 2 audio outputs; name one of: \"Stick [plughw:1,0] #1\", \"Stick [plughw:1,0] #2\"");
        assertThatThrownBy(() -> Devices.match("usb", DEVICES, "output"))
                .hasMessageStartingWith("\"usb\" fits 3 audio outputs; name one of: ");
    }

    /** Both are alike in name: whoever types it may not know of the second. */
    @Test
    void aNameThatSeveralBearIsAmbiguousTooEvenInFull() {
        assertThatThrownBy(() -> Devices.match("Stick [plughw:1,0]", DEVICES, "output"))
                .hasMessageStartingWith("\"Stick [plughw:1,0]\" fits 2 audio outputs");
    }

    @Test
    void anUnknownNameListsWhatThereIs() {
        assertThatThrownBy(() -> Devices.match("radio", DEVICES.subList(0, 1), "output"))
                .hasMessage("no audio output named \"radio\"; there are: \"default [default]\"");
        assertThatThrownBy(() -> Devices.match("  ", DEVICES.subList(0, 1), "output"))
                .hasMessage("no audio output named \"  \"; there are: \"default [default]\"");
        assertThatThrownBy(() -> Devices.match("radio", List.of(), "input"))
                .hasMessage("no audio input named \"radio\": this machine has none; plug one in, then try again");
    }

    @Test
    void isTheSameDeviceWhenTheDefaultChanges() {
        Device before = named("Dock", "USB Audio", 1);
        assertThat(before.isSame(new Device("Dock", "USB Audio", "", Device.Direction.OUTPUT, 1, true))).isTrue();
        assertThat(before.isSame(named("Dock", "USB Audio", 2))).isFalse();
    }
}
