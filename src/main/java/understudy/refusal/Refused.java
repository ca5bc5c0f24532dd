package understudy.refusal;

import java.util.List;
import java.util.stream.Collectors;

/** Something asked for can't be done, for each of these reasons; nothing has changed by trying. */
public final class Refused extends RuntimeException {

    /** What has to be mended. */
    public enum Mend {
        /** What was given: another name, number or file is needed. */
        INPUT,
        /** The set-up: a full disk, a busy device, a missing permission, another process that was quicker. */
        SETUP
    }

    private final Mend mend;
    private final transient List<Refusal> refusals;

    public Refused(Mend mend, List<Refusal> refusals, Throwable cause) {
        super(refusals.stream().map(Refusal::toString).collect(Collectors.joining("\n")), cause);
        this.mend = mend;
        this.refusals = List.copyOf(refusals);
    }

    /** What was given has to be mended. */
    public Refused(List<Refusal> refusals) {
        this(Mend.INPUT, refusals, null);
    }

    public Refused(Refusal refusal) {
        this(List.of(refusal));
    }

    public Refused(String wrong, String right) {
        this(wrong, Remedy.of(right));
    }

    public Refused(String wrong, Remedy remedy) {
        this(new Refusal(Location.NOWHERE, wrong, remedy));
    }

    /** What was given at this location has to be mended. */
    public static Refused at(String location, String wrong, String right) {
        return new Refused(new Refusal(Location.named(location), wrong, right));
    }

    /** The set-up has to be mended. */
    public static Refused setup(String wrong, String right) {
        return setup(wrong, right, (Throwable) null);
    }

    public static Refused setup(String wrong, String right, Throwable cause) {
        return setup("", wrong, right, cause);
    }

    public static Refused setup(String location, String wrong, String right) {
        return setup(location, wrong, right, null);
    }

    public static Refused setup(String location, String wrong, String right, Throwable cause) {
        return new Refused(Mend.SETUP, List.of(new Refusal(Location.named(location), wrong, right)), cause);
    }

    /** The same at {@code here}, where it doesn't say where already. */
    public Refused in(Location here) {
        return new Refused(mend, refusals.stream().map(refusal -> refusal.at(here)).toList(), this);
    }

    /** The same as a matter of the set-up, with what follows from it behind each remedy. */
    public Refused inSetup(String consequence) {
        return new Refused(Mend.SETUP, refusals.stream().map(refusal -> refusal.followedBy(consequence)).toList(), this);
    }

    public Mend mend() {
        return mend;
    }

    /** At least one. */
    public List<Refusal> refusals() {
        return refusals;
    }

    /** Of the first. */
    public String wrong() {
        return refusals.get(0).wrong();
    }

    /** Of the first, in nobody's words. */
    public String right() {
        return refusals.get(0).right();
    }
}
