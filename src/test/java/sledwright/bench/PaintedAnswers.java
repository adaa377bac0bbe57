package sledwright.bench;

import java.io.PrintStream;
import java.net.URI;
import java.time.Duration;
import java.util.Arrays;
import sledwright.browser.Browser;

/** From the key that changes a wish to the frame in which Chromium has painted the answer. */
final class PaintedAnswers {

    /** Changes a figure as a key does, and measures until the frame after the answer has come. */
    private static final String MEASURE = """
            const [figure, done] = arguments;
            const field = document.querySelector("[data-path='require.cores']"), answer = document.getElementById('answer');
            field.value = figure;
            const from = performance.now();
            const seen = new MutationObserver(() => {
                if (!answer.querySelector('.sum')) { return; }
                seen.disconnect();
                requestAnimationFrame(() => {
                    const after = new MessageChannel();
                    after.port1.onmessage = () => done(performance.now() - from);
                    after.port2.postMessage(0);
                });
            });
            seen.observe(answer, { childList: true });
            field.dispatchEvent(new Event('input', { bubbles: true }));""";
    private static final String[] FIGURES = {"20", "24", "16", "32", "12", "28", "18", "36", "14", "40", "22", "8"};
    private static final int CHANGES = 36;
    /** Somebody who talks meanwhile; steps and the curve come in this time. */
    private static final Duration REST = Duration.ofMillis(600);

    private PaintedAnswers() {
    }

    static void print(PrintStream out, URI server) throws InterruptedException {
        if (!Browser.isInstalled()) {
            out.println("no Chromium here");
            return;
        }
        try (Browser browser = Browser.start()) {
            browser.visit(server + "#require.cores=10&require.memory_gb=128").until("document.querySelector('#answer .sum') && document.querySelector('.spot')");
            double[] times = new double[CHANGES];
            for (int change = 0; change < CHANGES; change++) {
                times[change] = ((Number) browser.answer(MEASURE, FIGURES[change % FIGURES.length])).doubleValue();
                Thread.sleep(REST.toMillis());
            }
            Arrays.sort(times);
            out.printf("Chromium, %d changes of a wish, from the key to the painted answer: median %.0f ms, 95 %% %.0f ms, worst %.0f ms%n", times.length,
                    times[times.length / 2], times[times.length * 95 / 100], times[times.length - 1]);
        }
    }
}
