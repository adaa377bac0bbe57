package sledwright.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.Duration;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;

/**
 * One measured search.
 *
 * @param millis    wall-clock time
 * @param cpuMillis of the searching thread, which other work on the machine disturbs less
 */
record Sample(long seed, String yaml, Request request, Findings findings, double millis, double cpuMillis) {

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    static Sample of(Search search, long seed, String yaml, Request request, Duration limit) {
        long cpu = THREADS.getCurrentThreadCpuTime();
        long start = System.nanoTime();
        Findings findings = search.run(request, Deadline.in(limit));
        double millis = (System.nanoTime() - start) / 1e6;
        return new Sample(seed, yaml, request, findings, millis, (THREADS.getCurrentThreadCpuTime() - cpu) / 1e6);
    }
}
