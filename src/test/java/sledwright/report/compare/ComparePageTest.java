package sledwright.report.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.browser.Browser;
import sledwright.browser.DocumentChecks;
import sledwright.browser.InBrowser;
import sledwright.compare.Comparer;
import sledwright.compare.Cost;
import sledwright.desk.view.CompareView;
import sledwright.domain.Energy;
import sledwright.domain.Goal;
import sledwright.domain.Limits;
import sledwright.domain.PartChoice;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Stationery;
import sledwright.generator.Axis;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.report.page.Wording;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** The page of a comparison as a reader gets it. */
class ComparePageTest {

    private static final Job.Quote JOB = (Job.Quote) RequestReader.read(Source.of(Path.of("scenarios/small-web-node.yaml")), List.of(), Optional.empty(), Set.of(Kind.QUOTE));
    /** Low, so that few points are left: checking each takes its time. */
    private static final Limits LOW = new Limits(OptionalLong.of(23_000), JOB.request().limit().powerW(), JOB.request().limit().leadDays(),
            JOB.request().limit().inletC(), 0, JOB.request().limit().mainsV(), Set.of());
    private static final Request HOSTILE = new Request("<b>\"&' </script>", 1, JOB.request().require(), LOW,
            new Goal(JOB.request().objective(), JOB.request().worth(), JOB.request().licence()), Shortlist.PLAIN, PartChoice.of(JOB.request().platforms()));

    private static String page(Request request, boolean byPlatform, Axis... axes) {
        Comparer comparer = new Comparer(JOB.catalog(), new Search(JOB.catalog()));
        return ComparePage.of(CompareView.of(comparer.compare(request, Optional.of(new Energy(4, 28, 0.6)), Arrays.asList(Cost.values()), List.of(axes),
                byPlatform, Deadline.never()).with(comparer.together(request, 0.5, Deadline.never())), JOB.catalog()), JOB);
    }

    @Test
    @InBrowser
    void pageIsSound(Browser browser) {
        DocumentChecks.assertSound(browser, page(HOSTILE, false, Axis.CORES, Axis.LOAD));
        assertThat(browser.text()).contains("<b>\"&' </script>", "What more money buys");
    }

    @Test
    @InBrowser
    void pageByPlatformIsSound(Browser browser) {
        DocumentChecks.assertSound(browser, page(JOB.request().withLimit(LOW), true, Axis.CORES));
    }

    /** What the chart shows stands in the table, too, without any script. */
    @Test
    void everyPointHasItsRow() {
        String html = page(JOB.request(), false, Axis.THROUGHPUT);
        long points = html.lines().filter(line -> line.startsWith("<g class=\"spot")).count();
        assertThat(points).isGreaterThan(10);
        assertThat(html.split("<tr data-link=", -1)).as("each point is drawn for wide and for narrow screens").hasSize((int) points / 2 + 1);
        assertThat(html.replaceAll("(?s)<script>.*</script>", "")).doesNotContain("<button").doesNotContain("<input")
                .containsPattern("\\d\\s\u00d7\\s\\d+\\sGB").doesNotContainPattern("\\d\\sx\\s");
    }

    @Test
    @InBrowser
    void pointsAnswerToPointerAndKeys(Browser browser) {
        browser.show(page(JOB.request(), false, Axis.THROUGHPUT));
        assertThat(browser.ask("return document.querySelectorAll('.curve svg.broad [tabindex=\"0\"]').length")).as("one stop for each chart").isEqualTo(2L);
        browser.ask("document.querySelector('.spot[tabindex=\"0\"]').focus()");
        String first = (String) browser.ask("return document.querySelector('.tip:not([hidden])').textContent");
        assertThat(first).contains("; machine 1: ");
        browser.ask("document.activeElement.dispatchEvent(new KeyboardEvent('keydown', {key: 'ArrowRight', bubbles: true}))");
        assertThat((String) browser.ask("return document.querySelector('.tip:not([hidden])').textContent")).isNotEqualTo(first);
        assertThat(browser.ask("return document.querySelectorAll('tr.on').length")).as("its row is marked").isEqualTo(1L);
        browser.ask("document.activeElement.dispatchEvent(new KeyboardEvent('keydown', {key: 'End', bubbles: true}))");
        assertThat(browser.ask("return document.activeElement.dataset.link === Array.from(document.querySelectorAll('.curve')[0].querySelectorAll('.spot')).at(-1).dataset.link"))
                .isEqualTo(true);
        browser.ask("document.activeElement.blur()");
        assertThat(browser.ask("return document.querySelectorAll('.tip:not([hidden])').length")).isEqualTo(0L);
        browser.ask("document.querySelectorAll('.spot')[2].dispatchEvent(new MouseEvent('mouseenter'))");
        assertThat((String) browser.ask("return document.querySelector('.tip:not([hidden])').textContent")).isNotEmpty();
        assertThat(browser.barriers()).as("with a tip").isEmpty();
    }

    @Test
    @InBrowser
    void tablesAreSortedAndSearched(Browser browser) {
        browser.show(page(JOB.request(), false, Axis.THROUGHPUT));
        String costs = "return Array.from(document.querySelector('.curve tbody').rows).map(row => Number(row.cells[0].dataset.sort))";
        List<Number> before = numbers(browser.ask(costs));
        browser.ask("document.querySelector('.curve thead button').click(); document.querySelector('.curve thead button').click()");
        List<Number> after = numbers(browser.ask(costs));
        assertThat(after).isEqualTo(before.stream().sorted((one, other) -> Double.compare(other.doubleValue(), one.doubleValue())).toList()).isNotEqualTo(before);
        assertThat(browser.ask("return document.querySelector('.curve thead th').getAttribute('aria-sort')")).isEqualTo("descending");

        browser.ask("const field = document.querySelector('#tools input'); field.value = 'most FOR money'; field.dispatchEvent(new Event('input'))");
        assertThat(browser.ask("return Array.from(document.querySelectorAll('.curve tbody tr')).filter(row => !row.hidden).length")).isEqualTo(2L);
        assertThat((String) browser.ask("return document.querySelector('#tools [role=status]').textContent")).matches("2 of \\d+ steps, [12] of \\d+ machines");
        assertThat(browser.ask("return document.querySelectorAll('svg.broad .spot:not(.out)').length")).isEqualTo(2L);
        assertThat(browser.ask("return document.querySelectorAll('svg.narrow .spot:not(.out)').length")).isEqualTo(2L);
        assertThat(browser.ask("return Array.from(document.querySelectorAll('.curve tbody tr')).filter(row => !row.hidden).every("
                + "row => !document.getElementById('build-' + row.dataset.build).hidden)")).as("builds of points that stay").isEqualTo(true);
        assertThat((long) browser.ask("return Array.from(document.querySelectorAll('#builds tbody tr')).filter(row => !row.hidden).length")).isBetween(1L, 2L);
        assertThat(browser.barriers()).as("while searched").isEmpty();
    }

    @Test
    @InBrowser
    void aPhoneShowsAllOfItOnAFewScreens(Browser browser) {
        browser.show(page(JOB.request(), false, Axis.THROUGHPUT, Axis.CORES)).screen(Browser.PHONE, false);
        long[] drawing = longs(browser.ask("const box = document.querySelector('.curve svg.narrow').getBoundingClientRect(); return [Math.floor(box.left), Math.ceil(box.right), "
                + "Math.round(1200 * box.width / document.querySelector('.curve svg.narrow').viewBox.baseVal.width)]"));
        assertThat(drawing[0]).isNotNegative();
        assertThat(drawing[1]).as("the chart fits").isLessThanOrEqualTo(Browser.PHONE);
        assertThat(drawing[2]).as("hundredths of pixels that its letters of 12 are high").isGreaterThan(1100);
        assertThat(browser.ask("return document.querySelector('.curve svg.broad').checkVisibility()")).isEqualTo(false);
        long charts = (long) browser.ask("return document.querySelectorAll('.curve').length");
        assertThat((long) browser.ask("return document.documentElement.scrollHeight")).as("what was asked, and three screens beside the charts").isLessThan(200 + 800 * (3 + charts));
        assertThat(browser.ask("return document.querySelector('#build-1 .more').checkVisibility()")).isEqualTo(false);
        browser.ask("document.querySelector('#build-1 a').click()");
        assertThat(browser.ask("return document.querySelector('#build-1 .more').checkVisibility()")).as("all of a build whose number is followed").isEqualTo(true);
        assertThat(browser.sidewaysScroll()).isZero();
    }

    @Test
    void taxIsNamed() {
        assertThat(page(JOB.request(), false, Axis.LOAD)).contains("of 16 November 2026 before VAT").contains("Before VAT, which is 20\u00a0% of it.");
        assertThat(new CompareWords(CompareView.of(new Comparer(JOB.catalog(), new Search(JOB.catalog())).compare(JOB.request().withLimit(LOW), Optional.empty(), List.of(Cost.PRICE), List.of(Axis.LOAD),
                false, Deadline.never()), JOB.catalog()), Wording.of(JOB.catalog())).notes(Stationery.PLAIN)).extracting(CompareWords.Note::term).doesNotContain("Price");
    }

    @SuppressWarnings("unchecked")
    private static long[] longs(Object list) {
        return ((List<Number>) list).stream().mapToLong(Number::longValue).toArray();
    }

    @SuppressWarnings("unchecked")
    private static List<Number> numbers(Object list) {
        return (List<Number>) list;
    }
}
