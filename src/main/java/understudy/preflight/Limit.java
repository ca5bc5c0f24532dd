package understudy.preflight;

/** What ends a usable range; each is found by mending just that, on paper, and looking whether the input decodes then. */
public enum Limit {
    PATTERN("the pattern's own range ends here"),
    POLARITY("the two wires are swapped"),
    DROOP("droop: what blocks direct voltage lets long levels sag"),
    BANDWIDTH("bandwidth: the signal is too quick for what lies between the samples and the comparator"),
    CORE("core: the transformer can't carry such volts so slowly"),
    CLAMP("clamp: the signal is so large that the input cuts it"),
    OVERLAP("overlap: one burst has not died away when the next begins"),
    THRESHOLD("threshold: the signal is too small here, though the rig could give more"),
    SWING("swing: even the largest signal of this rig is too small here"),
    SHAPE("shape: the peaks beside the gap are so large that the next tooth does not arm the input"),
    TOGETHER("several things together: mending any one of them does not help");

    private final String words;

    Limit(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
