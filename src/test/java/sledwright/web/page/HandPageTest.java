package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import sledwright.browser.Browser;
import sledwright.browser.HtmlValidity;
import sledwright.browser.InBrowser;
import sledwright.web.Servers;
import sledwright.web.Wire;

/** A machine put together by hand on the drawing of its board, in a browser, by its own keys and clicks. */
@InBrowser
class HandPageTest {

    private static final URI SERVER = Servers.small().address();
    private static final String YAML = "application/yaml";
    static final String BUILD = "kind: build\nplatform: WREN-2\nprocessor: H1-08\nprocessors: 1\ncooling: WREN-HS-1\nsupply: RS-750\nsupply_count: 1\nmodules: { 1A1: M16, 1B1: M16 }\n";
    private static final String FILE_SERVER = """
            kind: build
            platform: LAPWING-R2
            processor: S1-08
            processors: 1
            cooling: LAPWING-HS-STD
            supply: PS-750G
            supply_count: 2
            modules: { 1A1: FV4R8-28-21, 1B1: FV4R8-28-21, 1C1: FV4R8-28-21, 1D1: FV4R8-28-21 }
            volumes:
              - { name: system, level: 1, group: rear, drives: [THS25-240R, THS25-240R] }
              - { name: files, level: 6, group: front, drives: [SKH35-4000, SKH35-4000, SKH35-4000, SKH35-4000], hot_spares: [SKH35-4000] }
            driver: X1
            cards: { X1: DB-8R6, X2: LB-2X10 }
            extras: { BLANK-LS2: 1, LAPWING-RISER-2: 1, RAILS-2U: 1 }
            """;
    private static final String PANEL = "!document.getElementById('panel').hidden";
    private static final String HOLDS = "document.querySelector('.hand-verdict .seal').textContent === 'Every rule holds'";
    private static final String FAILS = "!(" + HOLDS + ")";
    private static final String BROKEN = "document.querySelector('.broken').textContent.includes('%s')";

    /** The board of the build that a wish leads to. */
    private static void byHand(Browser browser, String wishes) {
        browser.visit(SERVER + "#" + wishes).until("document.querySelector('[data-do=hand]')").click("[data-do=hand]").until(HOLDS);
    }

    static String escaped(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private static String sku(Browser browser, String place) {
        return (String) browser.ask("return document.querySelector(\"[data-place='%s']\").dataset.sku".formatted(place));
    }

    /** A click where a person would have scrolled to. */
    private static Browser tap(Browser browser, String place) {
        browser.ask("document.querySelector(\"%s\").scrollIntoView({ block: 'center' })".formatted(at(place)));
        return browser.click(at(place));
    }

    /** Takes a part up. */
    private static void take(Browser browser, String place) {
        tap(browser, place).until(PANEL);
    }

    private static String at(String place) {
        return "[data-place='%s']".formatted(place);
    }

    private static String said(Browser browser) {
        return browser.ask("return document.getElementById('said').textContent").toString().replace('\u00a0', ' ');
    }

    private static String where(Browser browser) {
        return (String) browser.ask("return document.activeElement.dataset.place || document.activeElement.id");
    }

    @AfterEach
    void theBrowserHasNothingToComplainOf(Browser browser) {
        assertThat(browser.complaints()).filteredOn(line -> !line.contains("409 (Conflict)")).isEmpty();
    }

    @Test
    void aModuleGoesElsewhereAndEveryBrokenRuleIsSaid(Browser browser) {
        byHand(browser, "require.cores=8&require.memory_gb=32");
        String module = sku(browser, "module 1A1");
        take(browser, "module 1A1");
        tap(browser, "module 1A2").until(BROKEN.formatted("slot-order"));
        assertThat(sku(browser, "module 1A1")).isEmpty();
        assertThat(sku(browser, "module 1A2")).isEqualTo(module);
        assertThat(browser.text()).contains("Slot 1A2 is filled while slot 1A1 of the same channel is empty.", "The proved build costs \u20ac");
        assertThat(said(browser)).startsWith(module + " is in 1A2. ").contains("breach", "Slot 1A2 is filled while slot 1A1", "the proved build costs \u20ac");
        assertThat(browser.ask("return document.querySelector(\"%s\").getAttribute('aria-label')".formatted(at("module 1A2"))).toString())
                .startsWith("1A2: " + module + ", ").contains("; breaks ", "slot-order");
        assertThat(browser.barriers()).isEmpty();
        browser.click("#undo").until(HOLDS);
        assertThat(sku(browser, "module 1A1")).isEqualTo(module);
        take(browser, "module 1A1");
        browser.click("#out").until(FAILS);
        browser.click("#proved").until(HOLDS);
        assertThat(browser.ask("return document.getElementById('proved').disabled")).isEqualTo(true);
    }

    @Test
    void keysAloneMoveTakeOutAndLeave(Browser browser) {
        byHand(browser, "require.cores=8&require.memory_gb=32");
        String module = sku(browser, "module 1A1");
        browser.ask("document.querySelector(\"%s\").focus()".formatted(at("module 1A1")));
        browser.press(Keys.ENTER, Keys.ARROW_RIGHT);
        assertThat(where(browser)).isEqualTo("module 1A2");
        browser.press(Keys.ENTER).until(BROKEN.formatted("slot-order"));
        assertThat(where(browser)).as("where it was put").isEqualTo("module 1A2");
        browser.press(Keys.ENTER).press(Keys.ESCAPE);
        assertThat(browser.ask("return document.getElementById('panel').hidden")).isEqualTo(true);
        assertThat(said(browser)).isEqualTo("Nothing has changed.");
        browser.press(Keys.ENTER, Keys.ARROW_LEFT, Keys.ENTER).until(HOLDS);
        assertThat(sku(browser, "module 1A1")).isEqualTo(module);
        browser.press(Keys.DELETE).until(FAILS);
        assertThat(where(browser)).isEqualTo("module 1A1");
        browser.press(Keys.ENTER, Keys.TAB);
        assertThat(where(browser)).as("the list of what goes in").isEqualTo("part");
        browser.press(module, Keys.TAB, Keys.ENTER).until(HOLDS);
        browser.press(Keys.END);
        assertThat(where(browser)).isNotEqualTo("module 1A1");
        browser.press(Keys.HOME);
        assertThat(where(browser)).isEqualTo("module 1A1");
    }

    @Test
    void aPartIsReplacedFromTheListThatFitsAndThePriceStandsBesideTheOther(Browser browser) {
        browser.visit(SERVER + "board#came=file&file=" + escaped(BUILD)).until(HOLDS);
        take(browser, "module 1A1");
        assertThat((List<?>) browser.ask("return [...document.querySelectorAll('#part option')].map(option => option.value)"))
                .as("of the board's generation").hasToString("[M08, M16, M64, M128]");
        browser.ask("document.getElementById('part').value = 'M64'");
        browser.click("#alike").click("#put").until("document.querySelector('.beside-price')").until(HOLDS);
        assertThat(sku(browser, "module 1B1")).isEqualTo("M64");
        assertThat(browser.text()).contains("The build as it was opened costs \u20ac462.50, this one +\u20ac113.00", "2 x 64 GB = 128 GB");
        take(browser, "module 1A1");
        browser.ask("document.getElementById('part').value = 'M128'");
        browser.click("#put").until(BROKEN.formatted("one-module-type"));
        assertThat(browser.text()).contains("Back to the build as it was opened", "First slot of a channel: outermost. Not to scale: find slots by their names.");
        take(browser, "module 1C1");
        browser.ask("document.getElementById('part').value = 'M08'");
        browser.click("#put").until("document.getElementById('said').textContent.includes('M08 is in')").until(BROKEN.formatted("in-stock"));
        assertThat(browser.text()).contains("no price", "Stock does not hold all parts.", "What else is in it");
        assertThat(said(browser)).contains("M08 is in 1C1. ", ": stock does not hold all parts; the build as it was opened costs \u20ac");
        String shown = Wire.post(SERVER, "/page/hand?beside=1.00&came=file", YAML, BUILD).body();
        assertThat(shown).contains("not on offer", "M64, from \u20ac78.00, 12 to be had");
    }

    @Test
    void theAddressBringsTheBuildBack(Browser browser) {
        browser.visit(SERVER + "board#came=file&file=" + escaped(BUILD)).until(HOLDS);
        take(browser, "module 1A1");
        tap(browser, "module 1C1").until(FAILS);
        String address = (String) browser.ask("return location.href");
        browser.visit(address).until(FAILS);
        assertThat(sku(browser, "module 1C1")).isEqualTo("M16");
        browser.click("#proved").until(HOLDS).back().until(FAILS);
        browser.visit(SERVER + "board#before={").until("document.getElementById('fault').textContent === 'The address holds no build.'");
    }

    @Test
    void drivesAndCardsAreMovedReplacedAndTakenOut(Browser browser) {
        browser.visit(Servers.demo().address() + "board#came=found&file=" + escaped(FILE_SERVER)).until(HOLDS);
        String first = sku(browser, "drive front 1");
        take(browser, "drive front 1");
        tap(browser, "drive rear 1").until(BROKEN.formatted("drive-bay"));
        assertThat(sku(browser, "drive rear 1")).isEqualTo(first);
        assertThat(said(browser)).contains("have changed places.", "is a 3.5 drive; the bays rear take 2.5.");
        browser.click("#undo").until(HOLDS);
        take(browser, "drive rear 1");
        tap(browser, "drive front 6").until(BROKEN.formatted("drive-bay"));
        assertThat(said(browser)).startsWith("All drives of system go to front: a volume sits together.");
        browser.click("#proved").until(HOLDS);
        assertThat(browser.ask("return document.getElementById('proved').textContent")).isEqualTo("Back to the best build found");
        take(browser, "drive front 5");
        tap(browser, "drive front 8");
        assertThat(said(browser)).isEqualTo("The drives of front sit side by side from its first bay on; there is no gap to leave.");
        browser.press(Keys.ESCAPE).until("document.getElementById('panel').hidden");
        take(browser, "drive front 1");
        tap(browser, "card X3");
        assertThat(said(browser)).isEqualTo(first + " goes into drive bays alone.");
        browser.click("#out").until(BROKEN.formatted("volume-drives"));
        take(browser, "drive front 5");
        browser.ask("document.getElementById('part').value = '" + first + "'");
        assertThat(browser.text()).contains("files, as hot spare", "a volume of its own, volume1");
        browser.click("#put").until(HOLDS);
        take(browser, "card X1");
        tap(browser, "card X3").until("document.querySelector('[data-key=driver]').value === 'X3'").until(HOLDS);
        take(browser, "card X3");
        browser.click("#out").until(BROKEN.formatted("volume-driver"));
        take(browser, "card X1");
        browser.ask("document.getElementById('part').value = 'LB-2X10'");
        browser.click("#put").until("document.querySelector(\"%s\").dataset.sku === 'LB-2X10'".formatted(at("card X1")));
        assertThat(browser.barriers()).isEmpty();
    }

    @Test
    void whatHasNoPlaceOnTheBoardIsChangedByItsFields(Browser browser) {
        browser.visit(Servers.demo().address() + "board#came=proved&file=" + escaped(FILE_SERVER)).until(HOLDS);
        assertThat(browser.text()).contains("Level of volume files", "Another extra", "SATA and SAS drives hang on");
        assertThat(browser.ask("return document.querySelector(\"%s\").textContent".formatted(at("card X1"))).toString()).contains("x8, drives the drives");
        browser.type("#extra-LAPWING-RISER-2", "0").press(Keys.TAB);
        browser.until(BROKEN.formatted("riser"));
        assertThat(where(browser)).as("the next field").isNotEqualTo("extra-LAPWING-RISER-2");
        browser.type("#extra-LAPWING-RISER-2", "1").press(Keys.TAB);
        browser.until(HOLDS);
        for (String[] turn : new String[][] {{"level-0", "6", "volume-drives"}, {"set-processors", "2", "memory-present"}, {"set-supply", "none", "power-supply"},
                {"set-driver", "nothing", "volume-driver"}}) {
            browser.ask("document.getElementById('%s').focus()".formatted(turn[0]));
            browser.press(turn[1]).until(BROKEN.formatted(turn[2]));
            assertThat(where(browser)).isEqualTo(turn[0]);
            browser.click("#undo").until(HOLDS);
        }
        browser.ask("document.getElementById('set-processor').focus()");
        browser.press("S1-10").until("document.querySelector('.gist').textContent.includes('S1-10')");
        browser.ask("document.getElementById('extra').focus()");
        browser.press("RAILS-1U").until("document.getElementById('extra-RAILS-1U')");
    }

    @Test
    void nobodyIsHindered(Browser browser, @TempDir Path work) throws IOException {
        browser.visit(SERVER + "board");
        assertThat(browser.text()).contains("A machine by hand", "No build lies here yet. Take one from a machine with Change it by hand, or open a build that was saved as YAML.",
                "Back to the proved build", "How parts are moved");
        browser.click("#keys summary");
        assertThat(browser.text()).contains("Choose a part and then the place where it goes; where that is taken, the two change places. An empty place that is chosen takes any part of the catalogue that fits. "
                + "With keys: arrows go from place to place, Enter takes a part up and puts it down, Delete takes it out, Escape leaves it where it was.");
        assertThat(browser.barriers()).isEmpty();
        browser.upload("#file", Files.writeString(work.resolve("build.yaml"), BUILD)).until(HOLDS).screen(Browser.PHONE, true);
        take(browser, "module 1A1");
        assertThat(browser.barriers()).isEmpty();
        assertThat(browser.sidewaysScroll()).isZero();
        tap(browser, "module 1A2").until(BROKEN.formatted("slot-order"));
        assertThat(browser.barriers()).isEmpty();
        assertThat(browser.ask("return document.getElementById('sheet').disabled")).as("no sheet of what breaks rules").isEqualTo(true);
        String page = Wire.get(SERVER, "/board").body();
        assertThat(page).contains("Nothing is taken up");
        assertThat(HtmlValidity.faults(page)).isEmpty();
        assertThat(Wire.post(SERVER, "/page/hand?beside=much&came=file", YAML, BUILD).body()).contains("must be a price");
        assertThat(Wire.post(SERVER, "/page/hand?beside=9.50&came=moon", YAML, BUILD).body()).contains("must be one of file, found, proved");
        assertThat(Wire.post(SERVER, "/page/hand", YAML, "kind: quote\n").status()).isEqualTo(400);
    }
}
