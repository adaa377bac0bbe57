package sledwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.openqa.selenium.Keys;

/** What every view of the server's page must be, whatever it shows: for eyes, for keys, for listeners, on paper. */
public final class ViewChecks {

    /** A4 upright between margins of a centimetre, in CSS pixels. */
    private static final int PAPER = 718;
    /** More than any view has places to stand on. */
    private static final long MOST_STOPS = 400;

    private static final String REACHED = """
            const places = 'a[href], button, input, select, textarea, summary, [tabindex]';
            const standing = each => !each.disabled && each.tabIndex >= 0 && each.checkVisibility({ visibilityProperty: true })
                && !(each.type === 'radio' && !each.checked && document.querySelector(`input[type=radio][name="${each.name}"]:checked`));
            const name = each => each.tagName.toLowerCase() + (each.id ? '#' + each.id : '') + ' ' + (each.getAttribute('aria-label') || each.textContent || each.dataset.path || '').trim().slice(0, 30);
            window.expected = Array.from(document.querySelectorAll(places)).filter(standing);
            window.stops = [];
            document.addEventListener('focusin', event => {
                const each = event.target, box = each.getBoundingClientRect(), style = getComputedStyle(each);
                window.stops.push({ each, seen: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth && box.width > 4,
                    ring: each.matches(':focus-visible') && style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2 });
            });
            window.wrong = () => {
                const found = [], last = window.stops.findIndex(stop => stop.each === window.expected[0]);
                const round = last < 0 ? window.stops : window.stops.slice(0, last + 1);
                if (last < 0) { found.push('the keys never come round to where they began, but to ' + name(document.activeElement)); }
                for (const each of window.expected) { if (!round.some(stop => stop.each === each)) { found.push('never reached: ' + name(each)); } }
                round.forEach((stop, index) => {
                    if (!stop.seen) { found.push('not on the screen: ' + name(stop.each)); }
                    if (!stop.ring) { found.push('without a ring: ' + name(stop.each)); }
                    if (index > 0 && index !== last && !(round[index - 1].each.compareDocumentPosition(stop.each) & Node.DOCUMENT_POSITION_FOLLOWING)) {
                        found.push('out of order: ' + name(stop.each) + ' after ' + name(round[index - 1].each));
                    }
                });
                return found;
            };
            const first = window.expected[0];
            first.focus(); first.blur(); window.stops = []; scrollTo(0, 0);""";

    private static final String ON_PAPER = """
            const found = [], name = each => each.tagName.toLowerCase() + (each.id ? '#' + each.id : '') + '.' + each.className + ' ' + (each.textContent || each.value || '').trim().slice(0, 40);
            if (document.documentElement.scrollWidth > document.documentElement.clientWidth) { found.push('wider than the paper by ' + (document.documentElement.scrollWidth - document.documentElement.clientWidth)); }
            for (const each of document.body.querySelectorAll('*')) {
                if (!each.checkVisibility() || each.closest('svg') && each.tagName !== 'svg' || each.closest('.unseen, thead')) { continue; }
                const style = getComputedStyle(each), box = each.getBoundingClientRect();
                if (each.matches('button, input, select, textarea') && (style.borderTopWidth !== '0px' || style.appearance !== 'none' || style.backgroundColor !== 'rgba(0, 0, 0, 0)')) { found.push('a control: ' + name(each)); }
                if (style.overflowX !== 'visible' && each.scrollWidth > each.clientWidth + 1) { found.push('cut at its side: ' + name(each)); }
                if (style.overflowY !== 'visible' && each.scrollHeight > each.clientHeight + 1) { found.push('cut at its end: ' + name(each)); }
                if (['fixed', 'sticky'].includes(style.position)) { found.push('sticks to each sheet: ' + name(each)); }
                if (box.right > innerWidth + 1) { found.push('beyond the paper: ' + name(each)); }
            }
            return found;""";

    private ViewChecks() {
    }

    /** Axe finds nothing and nothing scrolls sideways, on a wide screen in the light and on a phone in the dark. */
    public static void assertForEveryone(Browser browser) {
        browser.screen(Browser.DESKTOP, false);
        assertThat(browser.barriers()).as("barriers in the light").isEmpty();
        assertThat(browser.sidewaysScroll()).as("sideways scroll of a wide screen").isZero();
        browser.screen(Browser.PHONE, true);
        assertThat(browser.barriers()).as("barriers on a phone in the dark").isEmpty();
        assertThat(browser.sidewaysScroll()).as("sideways scroll of a phone").isZero();
    }

    /** The tabulator reaches all that can be worked, in the order in which it stands, seen each time, and comes round again. */
    @SuppressWarnings("unchecked")
    public static void assertReachedByKeys(Browser browser) {
        browser.screen(Browser.DESKTOP, false).ask(REACHED);
        // A field of a date has further places within it.
        long places = (long) browser.ask("return window.expected.length + 4 * window.expected.filter(each => each.type === 'date').length");
        assertThat(places).isBetween(3L, MOST_STOPS);
        browser.keys(Keys.TAB.toString().repeat((int) places + 2));
        assertThat((List<String>) browser.ask("return window.wrong()")).isEmpty();
    }

    /** Nothing that only a screen can do stands on paper, and nothing is cut off there. */
    @SuppressWarnings("unchecked")
    public static void assertPrintable(Browser browser) {
        assertThat((List<String>) browser.paper(PAPER).ask(ON_PAPER)).isEmpty();
        browser.screen(Browser.DESKTOP, false);
    }
}
