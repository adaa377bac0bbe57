package sledwright.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import sledwright.domain.Part;
import sledwright.domain.Request;
import sledwright.explain.Explainer;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.request.Job;

/**
 * How long explanations take, warm: on every quote of the demo why parts of every kind are not in the best build, what
 * conflicts where one of its figures is asked for too high, and what the next figure more or less would cost.
 */
final class ExplainBenchmark {

    private static final int SLOWEST = 8;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    /** Values that no build of the demo reaches, alone or with the rest. */
    private static final List<String> TIGHTENED = List.of("limit.price=150", "limit.power_w=120", "limit.power_w=200",
            "require.memory_gb=100000", "require.cores=1000", "require.bandwidth_gbs=3000", "limit.lead_days=0", "machines=60");

    private final PrintStream out;

    ExplainBenchmark(PrintStream out) {
        this.out = out;
    }

    private enum Sort { WHY_NOT, CONFLICT, STEPS }

    private record Question(Sort sort, String words, Job.Quote job, List<String> whyNot) {
    }

    private record Timed(Question question, double millis, double cpuMillis) {
    }

    /** @param every asks after each so manieth part */
    void run(int every) throws IOException {
        List<Question> questions = questions(every);
        Search search = new Search(questions.get(0).job().catalog());
        for (int pass = 0; pass < 2; pass++) {
            boolean last = pass == 1;
            List<Timed> timed = new ArrayList<>();
            for (Question question : questions) {
                timed.add(time(search, question));
            }
            if (last) {
                report("why not", timed, Sort.WHY_NOT);
                report("conflicts", timed, Sort.CONFLICT);
                report("steps", timed, Sort.STEPS);
            }
        }
    }

    private List<Question> questions(int every) throws IOException {
        List<Question> questions = new ArrayList<>();
        for (Path file : DemoQuotes.files()) {
            Job.Quote job = DemoQuotes.read(file, List.of());
            List<Part> parts = List.copyOf(job.catalog().parts());
            for (int i = questions.size() % every; i < parts.size(); i += every) {
                String sku = parts.get(i).sku();
                questions.add(new Question(Sort.WHY_NOT, file.getFileName() + " --why-not " + sku, job, List.of(sku)));
            }
            for (String set : TIGHTENED) {
                questions.add(new Question(Sort.CONFLICT, file.getFileName() + " --set " + set, DemoQuotes.read(file, List.of(set)), List.of()));
            }
            questions.add(new Question(Sort.STEPS, file.getFileName() + " --steps", job, List.of()));
        }
        return questions;
    }

    private Timed time(Search search, Question question) {
        Request request = ((Job.Single) question.job()).request();
        Findings findings = search.run(request, Deadline.never());
        long cpu = THREADS.getCurrentThreadCpuTime();
        long start = System.nanoTime();
        Explainer explainer = new Explainer(question.job().catalog(), search, Deadline.never());
        if (question.sort() == Sort.STEPS) {
            explainer.steps(findings, true);
        } else {
            explainer.explain(findings, question.whyNot());
        }
        double millis = (System.nanoTime() - start) / 1e6;
        return new Timed(question, millis, (THREADS.getCurrentThreadCpuTime() - cpu) / 1e6);
    }

    private void report(String name, List<Timed> all, Sort sort) {
        List<Timed> timed = all.stream().filter(one -> one.question().sort() == sort).toList();
        out.printf(Locale.ROOT, "%-32s %5s %9s %9s %9s%n", name + ", ms", "n", "median", "95 %", "worst");
        row("by the clock", timed, Timed::millis);
        row("time of the thread", timed, Timed::cpuMillis);
        timed.stream().sorted(Comparator.comparingDouble(Timed::cpuMillis).reversed()).limit(SLOWEST)
                .forEach(one -> out.printf(Locale.ROOT, "  %7.1f of the thread  %s%n", one.cpuMillis(), one.question().words()));
    }

    private void row(String name, List<Timed> timed, ToDoubleFunction<Timed> time) {
        out.printf(Locale.ROOT, "%-32s %5d %s%n", name, timed.size(), Spread.of(timed.stream().mapToDouble(time)).columns());
    }
}
