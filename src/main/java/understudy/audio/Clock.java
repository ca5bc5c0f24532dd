package understudy.audio;

import java.util.concurrent.locks.LockSupport;

/** Time and waiting, so that a run can also be gone through faster than it would last. */
interface Clock {

    /** The real one. */
    Clock SYSTEM = new Clock() {
        @Override
        public long nanos() {
            return System.nanoTime();
        }

        @Override
        public void pause(long nanos) {
            LockSupport.parkNanos(nanos);
        }
    };

    /** Rises steadily from anywhere. */
    long nanos();

    /** Waits about so long. */
    void pause(long nanos);
}
