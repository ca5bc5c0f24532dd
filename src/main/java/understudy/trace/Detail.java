package understudy.trace;

import java.util.Arrays;
import java.util.Optional;

/** What was written down of a job by hand, and can be set right later. */
public enum Detail {
    VEHICLE("vehicle"),
    COMPLAINT("complaint"),
    WHO("who"),
    /** The words with which the job was closed. */
    REMARK("remark");

    private final String key;

    Detail(String key) {
        this.key = key;
    }

    /** How it is stored, and named in a sentence. */
    public String key() {
        return key;
    }

    public static Optional<Detail> of(String key) {
        return Arrays.stream(values()).filter(detail -> detail.key.equals(key)).findFirst();
    }
}
