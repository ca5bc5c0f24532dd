package understudy.audio;

import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;

/** How long the memory collector has halted the program so far. Reading allocates nothing. */
final class CollectorClock {

    private final GarbageCollectorMXBean[] collectors = ManagementFactory.getGarbageCollectorMXBeans().stream()
            .filter(bean -> !bean.getName().contains("Cycles") && !bean.getName().contains("Concurrent"))
            .toArray(GarbageCollectorMXBean[]::new);

    long haltedMillis() {
        long sum = 0;
        for (GarbageCollectorMXBean collector : collectors) {
            sum += Math.max(0, collector.getCollectionTime());
        }
        return sum;
    }
}
