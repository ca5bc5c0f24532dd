package understudy.trace;

import java.util.Arrays;

/** Numbers by key, without boxing; the key is its own hash, so keys must be well mixed. */
final class Memo {

    private long[] keys = new long[1 << 10]; // 0: free
    private double[] values = new double[keys.length];
    private int size;

    /** NaN where there is none. */
    double get(long key) {
        int slot = slot(key);
        return keys[slot] == 0 ? Double.NaN : values[slot];
    }

    void put(long key, double value) {
        if (2 * size >= keys.length) {
            grow();
        }
        int slot = slot(key);
        size += keys[slot] == 0 ? 1 : 0;
        keys[slot] = key == 0 ? 1 : key;
        values[slot] = value;
    }

    private int slot(long key) {
        long wanted = key == 0 ? 1 : key;
        int slot = (int) (wanted >>> 32) & keys.length - 1;
        while (keys[slot] != 0 && keys[slot] != wanted) {
            slot = slot + 1 & keys.length - 1;
        }
        return slot;
    }

    private void grow() {
        long[] oldKeys = keys;
        double[] oldValues = values;
        keys = new long[2 * oldKeys.length];
        values = new double[keys.length];
        size = 0;
        for (int slot = 0; slot < oldKeys.length; slot++) {
            if (oldKeys[slot] != 0) {
                put(oldKeys[slot], oldValues[slot]);
            }
        }
    }

    void clear() {
        Arrays.fill(keys, 0);
        size = 0;
    }
}
