package understudy.audio;

import java.util.List;

/**
 * What a device opens with, each tried by opening it.
 *
 * @param channels      numbers of channels, rising
 * @param ratesHz       rising
 * @param bits          of a sample, falling: 32, 24, 16
 * @param convertsRates the system opens it at rates that no device has, so that it converts on the way: what the device
 *                      itself does is then unknown
 * @param problem       why it did not open at all; empty when it did
 */
public record DeviceAbilities(
        List<Integer> channels, List<Integer> ratesHz, List<Integer> bits, boolean convertsRates, String problem) {

    public DeviceAbilities {
        channels = List.copyOf(channels);
        ratesHz = List.copyOf(ratesHz);
        bits = List.copyOf(bits);
    }
}
