package sledwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
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

/** The page in a browser, through its own keys and clicks. */
@InBrowser
class AskPageTest {

    private static final String SERVER = Servers.small().address().toString();
    private static final String PLAIN = SERVER + "#require.cores=8&require.memory_gb=32";
    private static final String ANSWERED = "document.querySelector('#answer .sum') && !document.querySelector('#answer[aria-busy]')";

    private static String sum(Browser browser) {
        browser.until(ANSWERED);
        return (String) browser.ask("return document.querySelector('.sum').textContent");
    }

    private static String text(Browser browser, String selector) {
        return (String) browser.ask("return document.querySelector(\"" + selector + "\").textContent");
    }

    private static String address(Browser browser) {
        return (String) browser.ask("return decodeURIComponent(location.hash)");
    }

    @AfterEach
    void theBrowserHasNothingToComplainOf(Browser browser) {
        assertThat(browser.complaints()).filteredOn(line -> !line.contains("400 (Bad Request)")).isEmpty();
    }

    @Test
    void everyChangeIsAnsweredAndCanBeTakenBack(Browser browser) {
        browser.visit(PLAIN);
        String eight = sum(browser);
        assertThat(browser.text()).contains("Proved: no cheaper valid build exists", "What money buys", "Cores", "Met exactly");
        browser.type("[data-path='require.cores']", "16").until("document.querySelector('.sum').textContent !== '" + eight + "'");
        String sixteen = sum(browser);
        assertThat(sixteen).isNotEqualTo(eight);
        browser.until("document.getElementById('said').textContent.startsWith('" + sixteen + ": ')");
        browser.press(Keys.ENTER).until("location.hash.includes('require.cores=16')");
        browser.back().until("document.querySelector('.sum').textContent === '" + eight + "'");
        assertThat(browser.ask("return document.querySelector(\"[data-path='require.cores']\").value")).isEqualTo("8");
    }

    @Test
    void whatTheNextFigureCostsStandsBesideItsFieldAndIsTakenByAClick(Browser browser) {
        browser.visit(PLAIN).until("document.querySelector(\"[data-key='require.memory_gb'] .step\")");
        assertThat(browser.ask("return document.querySelector(\"[data-key='require.memory_gb'] [data-set='64'] .by\").textContent").toString()).startsWith("+\u20ac");
        String figure = (String) browser.ask("return document.querySelector(\"[data-key='require.memory_gb'] .step\").dataset.set");
        browser.click("[data-key='require.memory_gb'] .step").until("location.hash.includes('require.memory_gb=" + figure + "')");
        assertThat(browser.ask("return document.querySelector(\"[data-path='require.memory_gb']\").value")).isEqualTo(figure);
    }

    @Test
    void otherDaysAndConditionsStandBesideTheirFieldsWithWhatTheyChange(Browser browser) {
        browser.visit(PLAIN + "&limit.lead_days=1").until("document.querySelector(\"[data-key='limit.lead_days'] .step\")");
        assertThat(sum(browser)).isEqualTo("\u20ac496.00");
        assertThat(browser.text()).contains("2 days -\u20ac33.50");
        browser.click("[data-key='limit.lead_days'] .step").until("location.hash.includes('limit.lead_days=2')").until("document.querySelector('.sum').textContent === '\u20ac462.50'");
        browser.visit(PLAIN).until(ANSWERED).ask("document.getElementById('more').open = true");
        browser.click("[data-add='limit.by']").press("thursday", Keys.ENTER);
        String thursday = LocalDate.now().with(TemporalAdjusters.next(DayOfWeek.THURSDAY)).toString();
        browser.until("location.hash.includes('limit.by=" + thursday + "')").until("document.querySelector(\"[data-key='limit.by'] .step\")");
        assertThat(browser.ask("return document.querySelector(\"[data-path='limit.by']\").value")).isEqualTo(thursday);
        browser.type("[data-path='limit.by']", "tomorrow").press(Keys.ENTER).until("location.hash.includes('limit.by=" + LocalDate.now().plusDays(1) + "')");
        browser.visit(Servers.demo().address() + "#require.cores=20&require.memory_gb=256&limit.conditions=new&limit.conditions=refurbished")
                .until("document.querySelector(\"[data-key='limit.conditions'] .step\")");
        assertThat(browser.text()).contains("used, too -\u20ac");
        browser.click("[data-key='limit.conditions'] .step").until("document.querySelector(\"[data-list='limit.conditions'][value='used']\").checked").until(ANSWERED);
        assertThat(address(browser)).contains("limit.conditions=used", "limit.conditions=refurbished");
    }

    /** The builds stand in the order of a figure that can be read, and each step names it, too. */
    @Test
    void whatIsJudgedStandsBesideThePriceWhereThatIsNotThePrice(Browser browser) {
        browser.visit(Servers.demo().address() + "#require.cores=24&require.memory_gb=128&objective=least-total&energy.years=4&energy.price_per_kwh=0.3&limit.lead_days=6")
                .until("document.querySelector(\"[data-key='require.cores'] .step\")");
        assertThat(sum(browser)).isEqualTo("\u20ac435.62");
        assertThat(text(browser, ".verdict .judged")).isEqualTo("Price and energy \u20ac2,643.14");
        assertThat(text(browser, ".options .judged")).isEqualTo("price and energy \u20ac2,643.14");
        assertThat(text(browser, "details:nth-of-type(2) .judged")).startsWith("price and energy \u20ac").contains(", +\u20ac");
        assertThat(browser.ask("return document.querySelector('.options .more')")).isNull();
        assertThat(text(browser, "[data-key='objective'] .most")).isEqualTo("Steps are in price and energy.");
        assertThat(browser.text()).contains("16 -\u20ac234.51");
        browser.click("[data-key='require.cores'] [data-set='16']").until("document.querySelector('.sum').textContent === '\u20ac453.40'");
        assertThat(text(browser, ".verdict .judged")).isEqualTo("Price and energy \u20ac2,408.63");
        browser.until("document.getElementById('said').textContent.startsWith('\u20ac453.40, price and energy \u20ac2,408.63: ')");
        browser.visit(Servers.demo().address() + "#require.cores=24&require.memory_gb=128&objective=best-value&worth.core=10").until("document.querySelector(\"[data-key='require.cores'] .step\")");
        assertThat(text(browser, ".verdict .judged")).startsWith("Price less worth ");
        assertThat(text(browser, "[data-key='objective'] .most")).isEqualTo("Steps are in price less worth.");
    }

    @Test
    void eachFurtherBuildSaysWhatItsPriceBuysBeforeItIsOpened(Browser browser) {
        browser.visit(Servers.demo().address() + "#require.cores=16&require.memory_gb=64").until("document.querySelectorAll('.options details').length > 1");
        assertThat((Long) browser.ask("return document.querySelectorAll('.options details:not([open]) .buys').length"))
                .isEqualTo(browser.ask("return document.querySelectorAll('.options details').length - 1"));
        assertThat(text(browser, "details:nth-of-type(2) summary .buys")).startsWith("For \u20ac").contains(" more than the best: ");
        assertThat((Boolean) browser.ask("return document.querySelector('details:nth-of-type(2) summary .buys').offsetHeight > 0")).isTrue();
    }

    @Test
    void whatTheSameMemoryOnEveryChannelCostsStandsBesideItAndIsGivenUpByAClick(Browser browser) {
        browser.visit(Servers.demo().address() + "#platforms=BUSTARD-R4&require.processors=4&require.memory_gb=512&require.balanced=true")
                .until("document.querySelector(\"[data-key='require.balanced'] .step\")");
        assertThat(browser.text()).contains("no -\u20ac196.80");
        browser.click("[data-key='require.balanced'] .step").until("location.hash.includes('require.balanced=false')").until(ANSWERED);
        assertThat(browser.ask("return document.querySelector(\"[data-path='require.balanced']\").value")).isEqualTo("false");
    }

    @Test
    void aPointOfTheCurveBecomesAWish(Browser browser) {
        browser.visit(PLAIN).until("document.querySelectorAll('#chart .spot').length > 1");
        String value = (String) browser.ask("return [...document.querySelectorAll('.points button')].pop().dataset.set");
        browser.ask("[...document.querySelectorAll('#chart .spot .hit')].pop().dispatchEvent(new MouseEvent('click', { bubbles: true }))");
        browser.until("location.hash.includes('require.throughput=" + value + "')").until(ANSWERED);
    }

    @Test
    void anImpossibleWishShowsItsWaysOutWhichAreTakenByAClick(Browser browser) {
        browser.visit(PLAIN + "&limit.price=20").until("document.querySelector('.way')");
        assertThat(browser.text()).contains("Impossible: no valid build exists", "What is in the way", "Ways out", "Raise the price from \u20ac20.00 to ");
        browser.until("document.getElementById('said').textContent === 'Impossible: no valid build exists.'");
        browser.click(".way").until(ANSWERED);
        assertThat(address(browser)).doesNotContain("limit.price=20");
        assertThat(browser.text()).contains("Proved: no cheaper valid build exists");
    }

    @Test
    void hotSparesAreGivenUpByAClickWhileTheirVolumeStays(Browser browser) {
        String volume = "require.storage.0.";
        browser.visit(Servers.demo().address() + "#platforms=LAPWING-R2&require.cores=8&require.memory_gb=32&" + volume + "name=s&" + volume + "usable_gb=400&"
                + volume + "level=1&" + volume + "kind=ssd&" + volume + "hot_spares=1").until("document.querySelector('.way')");
        browser.ask("[...document.querySelectorAll('.way')].find(way => way.textContent.startsWith('Do without hot spares for volume s')).click()");
        browser.until(ANSWERED);
        assertThat(sum(browser)).isEqualTo("\u20ac287.68");
        assertThat(address(browser)).contains(volume + "hot_spares=0", volume + "usable_gb=400");
    }

    @Test
    void anyPartIsAskedAboutDemandedOrLeftOut(Browser browser) {
        browser.visit(PLAIN).until(ANSWERED).type("#part", "H2-16").press(Keys.ENTER);
        browser.until("document.querySelector('.about')");
        assertThat(browser.text()).contains("Asked about", "H2-16", "\u20ac221.50 dearer", "Insist on it", "No more about it");
        browser.click("[aria-label='Insist on H2-16']").until("document.querySelector('.gist').textContent.includes('H2-16')");
        assertThat(address(browser)).contains("use=H2-16");
        browser.click("[aria-label='Take H2-16 out']").until("!document.querySelector('.gist').textContent.includes('H2-16')");
        browser.until(ANSWERED).click("[aria-label='Leave out H1-08']").until("location.hash.includes('forbid=H1-08')")
                .until("!document.querySelector('.gist').textContent.includes('H1-08')");
        browser.type("#part", "H2-17").press(Keys.ENTER);
        browser.until("document.querySelector('#part-fault').textContent.includes('H2-17 is no part of the catalogue')");
    }

    @Test
    void aFaultStandsBesideItsFieldAndTheAnswerStays(Browser browser) {
        browser.visit(PLAIN);
        String before = sum(browser);
        browser.type("[data-path='require.cores']", "many").until("document.querySelector(\"[data-key='require.cores'] .fault\").textContent.includes('must be a number')");
        assertThat(browser.ask("return document.querySelector(\"[data-path='require.cores']\").getAttribute('aria-invalid')")).isEqualTo("true");
        assertThat(sum(browser)).isEqualTo(before);
        browser.type("[data-path='require.cores']", "10").until("document.querySelector(\"[data-key='require.cores'] .fault\").textContent === ''");
    }

    @Test
    void wishesAreAddedAndDroppedByKeysAlone(Browser browser) {
        browser.visit(PLAIN).until(ANSWERED).ask("document.querySelector('#more summary').focus()");
        browser.press(Keys.ENTER).press(Keys.TAB);
        assertThat(browser.ask("return document.activeElement.textContent")).as("cores and memory are there already").isEqualTo("Memory bandwidth");
        browser.press(Keys.SPACE);
        assertThat(browser.ask("return document.activeElement.dataset.path")).isEqualTo("require.bandwidth_gbs");
        browser.press("40", Keys.ENTER).until("location.hash.includes('require.bandwidth_gbs=40')").until(ANSWERED);
        browser.press(Keys.TAB);
        assertThat(browser.ask("return document.activeElement.getAttribute('aria-label')")).isIn("Without: Memory bandwidth", null);
        browser.click(".wish[data-key='require.bandwidth_gbs'] .drop").until("!location.hash.includes('bandwidth')");
    }

    /** What is pressed is gone by then: whoever works with keys alone stands near it. */
    @Test
    void keysAreNeverLeftNowhere(Browser browser) {
        browser.visit(PLAIN + "&use=H1-10").until(ANSWERED).until("document.querySelector('.step')").ask("document.querySelector('.step').focus()");
        String before = address(browser);
        browser.press(Keys.ENTER).until("location.hash !== '" + before + "'").until(ANSWERED).until("document.activeElement.matches('.step')");
        browser.ask("document.querySelector('[data-unlist]').focus()");
        browser.press(Keys.ENTER).until("!location.hash.includes('use=')").until("document.activeElement.matches('#more summary')").until(ANSWERED);
        browser.ask("document.querySelector('#undo').focus()");
        browser.press(Keys.ENTER).press(Keys.ENTER).until("document.querySelector('#undo').disabled").until("document.activeElement.id === 'answer'");
    }

    @Test
    void theWholeMachineIsAskedFor(Browser browser) {
        browser.visit(PLAIN).until(ANSWERED);
        for (String wish : List.of("require.storage", "extras", "limit.conditions", "require.balanced", "platforms")) {
            browser.ask("document.getElementById('more').open = true");
            browser.click("[data-add='" + wish + "']");
        }
        browser.type("[data-path='require.storage.0.usable_gb']", "400").click("[data-list='platforms'][value='WREN-2']");
        browser.until("location.hash.includes('platforms=WREN-2')");
        assertThat(address(browser)).contains("require.storage.0.name=system", "require.storage.0.usable_gb=400", "require.storage.0.level=1", "extras.RAILS=1", "require.balanced=true");
        assertThat(browser.barriers()).isEmpty();
    }

    @Test
    void pricePointsADiscountAndEnergyAreWishes(Browser browser) {
        browser.visit(PLAIN + "&price_points=3&discount_percent=10&energy.years=4&energy.price_per_kwh=0.3&objective=least-total").until(ANSWERED);
        assertThat(browser.text()).contains("Chosen for", "least price", "Customer pays", "Energy", "Price points", "Discount", "least price and energy", "Runs for", "A kWh costs");
        assertThat(browser.barriers()).isEmpty();
    }

    @Test
    void aMailFillsTheForm(Browser browser) {
        browser.visit(PLAIN).until(ANSWERED).ask("document.getElementById('from-mail').open = true");
        browser.type("#mail", "Hello,\nwe need 2 machines with 12 cores and 64 GB RAM, a GPU, no H1-10, please.").click("#mail-form button")
                .until("location.hash.includes('machines=2')").until(ANSWERED);
        assertThat(address(browser)).contains("require.cores=12", "require.memory_gb=64", "forbid=H1-10");
        assertThat(browser.text()).contains("What was read", "12 cores", "Cores: 12", "Memory: 64 GB", "What was not understood", "GPU");
        assertThat(browser.ask("return document.activeElement.id")).isEqualTo("mail-title");
        assertThat(browser.barriers()).isEmpty();
        browser.click("#undo").until("!location.hash.includes('machines')");
        browser.type("#mail", "Good morning").click("#mail-form button").until("!document.getElementById('mail-none').hidden");
        assertThat(Wire.post(Servers.small().address(), "/api/mail?today=2026-11-18", "application/yaml", "mail: 8 cores by Friday").body())
                .contains("\"limit.by\"", "\"2026-11-20\"", "\"unread\": []");
        assertThat(Wire.post(Servers.small().address(), "/api/mail", "application/json", "{\"male\": 1}").body()).contains("is missing: the text of the mail stands under this key");
    }

    @Test
    void onAPhoneThePriceAlwaysShowsAndLeadsToTheAnswer(Browser browser) {
        browser.visit(PLAIN + "&require.bandwidth_gbs=20&require.base_ghz=1&require.spare_slots=1&limit.price=9000").until(ANSWERED).screen(Browser.PHONE, true).ask("scrollTo(0, 0)");
        browser.until("getComputedStyle(document.getElementById('brief')).visibility === 'visible'").click("#brief");
        assertThat(browser.ask("return document.activeElement.id")).isEqualTo("answer");
        browser.until("getComputedStyle(document.getElementById('brief')).visibility === 'hidden'");
        assertThat(address(browser)).contains("require.cores=8");
        assertThat(HtmlValidity.faults(Wire.get(Servers.small().address(), "/").body())).isEmpty();
    }

    /** What needs parts that nobody has is no matter of a click. */
    @Test
    void waysThatNeedStockAreNoButtons(Browser browser) {
        browser.visit(Servers.demo().address() + "#require.cores=64&limit.price=500&limit.conditions=new&machines=40&discount_percent=10").until("document.querySelector('.ways')");
        String stock = "[...document.querySelectorAll('.ways li')].filter(each => each.textContent.includes('more units of '))";
        assertThat((Long) browser.ask("return " + stock + ".length")).isPositive();
        assertThat(browser.ask("return " + stock + ".filter(each => each.querySelector('button')).length")).isEqualTo(0L);
        assertThat((Long) browser.ask("return document.querySelectorAll('.ways button').length")).isPositive();
    }

    @Test
    void whatWasDoneIsTakenBackAfterThePageIsLoadedAnew(Browser browser) {
        browser.visit(PLAIN).until(ANSWERED).type("[data-path='require.cores']", "16").press(Keys.ENTER).until("location.hash.includes('require.cores=16')").ask("location.reload()");
        browser.until("document.documentElement.dataset.ready && performance.getEntriesByType('navigation')[0].type === 'reload'").until(ANSWERED)
                .until("!document.getElementById('undo').disabled").click("#undo").until("location.hash.includes('require.cores=8')").until("document.getElementById('undo').disabled");
    }

    @Test
    void aFileThatIsNoQuoteLeavesTheAnswer(Browser browser) {
        browser.visit(PLAIN);
        String before = sum(browser);
        browser.upload("#file", Path.of("scenarios/branch-offices-order.yaml")).until("document.getElementById('load-fault').textContent !== ''");
        assertThat(browser.ask("return document.getElementById('load-fault').textContent"))
                .isEqualTo("branch-offices-order.yaml: kind must be quote here; other files are answered under Orders, stock, bench");
        assertThat(sum(browser)).isEqualTo(before);
        browser.upload("#file", Path.of("scenarios/small-web-node.yaml")).until("document.getElementById('load-fault').textContent === ''").until("location.hash.includes('LAPWING-R1')");
    }

    @Test
    void papersAreHandedOver(Browser browser) {
        browser.visit(PLAIN).until(ANSWERED).ask("const made = URL.createObjectURL; window.papers = []; URL.createObjectURL = blob => { papers.push(blob.type); return made.call(URL, blob); }");
        browser.click("[data-paper=offer]").until("papers.length === 1").click("[data-paper=sheet]").until("papers.length === 2");
        assertThat(browser.ask("return papers.join()")).isEqualTo("application/pdf,application/pdf");
    }

    @Test
    void partsAreWithinTheirPanelOnEveryScreen(Browser browser) {
        browser.visit(Servers.demo().address().toString()).until(ANSWERED).upload("#file", Path.of("scenarios/virtual-machine-host.yaml")).until("location.hash.includes('TEST-48H')")
                .until("document.querySelectorAll('.options details').length > 1").until(ANSWERED);
        browser.ask("document.querySelectorAll('.options details')[1].open = true");
        for (int width : List.of(720, 961, 1024, 1140, 1300)) {
            browser.screen(width, false);
            assertThat((Long) browser.ask("const inside = document.querySelectorAll('.options .inside')[1]; return Math.round(inside.querySelector('table').getBoundingClientRect().right - inside.getBoundingClientRect().right)"))
                    .as(width + " wide").isNegative();
            assertThat(browser.sidewaysScroll()).as(width + " wide").isZero();
        }
    }

    @Test
    void faultsAreWholeSentences(Browser browser) {
        browser.visit(PLAIN).until(ANSWERED).type("#part", "h1-08").press(Keys.ENTER).until("document.querySelector('#part-fault').textContent !== ''");
        assertThat(browser.ask("return document.querySelector('#part-fault').textContent")).isEqualTo("h1-08 is no part of the catalogue, did you mean H1-08?");
        browser.visit(SERVER + "#require.cores=many&require.memory_gb=much").until("document.getElementById('said').textContent.includes('number')");
        assertThat(browser.ask("return document.getElementById('said').textContent"))
                .isEqualTo("require.cores \"many\": must be a number. require.memory_gb \"much\": must be a number.");
        browser.visit(SERVER + "#require.cores=16%22+many").until("document.getElementById('said').textContent.includes('16')");
        assertThat(browser.ask("return document.querySelector('[data-id=\"require.cores\"] .fault').textContent")).isEqualTo("must be a number");
        browser.visit(PLAIN).until(ANSWERED).ask("document.getElementById('more').open = true");
        browser.click("[data-add='on_hand']").until("location.hash.includes('on_hand')").until(ANSWERED).press(Keys.TAB, "3");
        browser.until(ANSWERED);
        assertThat(browser.ask("return document.querySelector(\"[data-key='on_hand'] .fault\").textContent")).isEqualTo("");
        browser.type("[data-key='on_hand'] [data-sku]", "H9").until("document.querySelector(\"[data-key='on_hand'] .fault\").textContent.includes('is no part of the catalogue')");
    }

    @Test
    void ofAPartThereIsOneWishAndASecondRowOfItSaysSo(Browser browser) {
        browser.visit(PLAIN + "&on_hand.H1-08=2").until(ANSWERED).ask("document.getElementById('more').open = true");
        browser.click("[data-add='on_hand']").until("document.querySelectorAll(\"#wishes [data-key='on_hand']\").length === 2").press("H1-08");
        browser.until("document.getElementById('said').textContent.endsWith('H1-08 stands in another row; say there how many.')");
        assertThat(browser.ask("return document.querySelector(\"[data-id='on_hand.'] .fault\").textContent")).isEqualTo("H1-08 stands in another row; say there how many.");
        assertThat(address(browser)).contains("on_hand.H1-08=2").doesNotContain("on_hand.H1-08=1");
        browser.press("X", Keys.TAB).until("location.hash.includes('on_hand.H1-08X=1')");
        assertThat(address(browser)).contains("on_hand.H1-08=2");
    }

    @Test
    void whoeverIsWithinReachAgainIsAnsweredAgain(Browser browser) {
        browser.visit(PLAIN).until(ANSWERED).ask("window.reached = window.fetch; window.fetch = () => Promise.reject(new TypeError('out of reach'))");
        browser.type("[data-path='require.cores']", "9").until("document.getElementById('answer').textContent === 'The server does not answer. Is it still running?'");
        browser.ask("window.fetch = window.reached; window.dispatchEvent(new Event('online'))");
        browser.until("document.querySelector('#answer .answer.proved')").until(ANSWERED);
    }

    @Test
    void aCustomerOfSeveralLinesKeepsThemAll(Browser browser, @TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("lines.yaml"), "kind: quote\ncustomer: [Fen Survey, 'Dyke 2, Ely', mail@fen.example]\nrequire: { cores: 8 }\n");
        browser.visit(PLAIN).until(ANSWERED).upload("#file", file).until("location.hash.includes('customer')").until(ANSWERED);
        assertThat(browser.ask("return document.querySelector('[data-lines]').value")).isEqualTo("Fen Survey\nDyke 2, Ely\nmail@fen.example");
        assertThat(address(browser)).contains("customer=Fen+Survey&customer=Dyke+2,+Ely&customer=mail@fen.example");
        browser.type("[data-lines]", "Rival Ltd\n\n Mill 1 ").ask("document.activeElement.blur()");
        browser.until("location.hash.includes('customer=Rival+Ltd&customer=Mill+1')").until(ANSWERED);
        assertThat(browser.barriers()).isEmpty();
        browser.click("[data-id=customer] .drop").until("!location.hash.includes('customer')");
        browser.ask("document.getElementById('more').open = true");
        browser.click("[data-add=customer]").until("document.activeElement.matches('textarea[data-lines]')");
    }

    static List<Path> requests() throws IOException {
        try (var files = Files.list(Path.of("scenarios"))) {
            return files.filter(AskPageTest::isQuote).sorted().toList();
        }
    }

    private static boolean isQuote(Path file) {
        try {
            return file.toString().endsWith(".yaml") && Files.readString(file).contains("\nkind: quote\n");
        } catch (IOException unreadable) {
            return false;
        }
    }

    /** Into the form and out of it again, a request says what it said, and so does its address. */
    @Test
    @SuppressWarnings("unchecked")
    void filesAreLoadedAndSavedWithoutLoss(Browser browser) throws IOException {
        browser.visit(PLAIN).until(ANSWERED);
        assertThat(requests()).hasSizeGreaterThan(15);
        for (Path file : requests()) {
            List<String> told = (List<String>) browser.answer("""
                    const [text, done] = arguments;
                    const load = async yaml => (await (await fetch('/page/load', { method: 'POST', headers: { 'Content-Type': 'application/yaml' }, body: yaml })).json()).wishes;
                    import('/assets/request.js').then(async request => {
                      const first = await load(text);
                      const saved = request.yaml(request.fromPairs(first));
                      const back = request.fromAddress('#' + request.address(request.fromPairs(first)));
                      done([JSON.stringify(first), JSON.stringify(await load(saved.text)), JSON.stringify(await load(request.yaml(back).text)), saved.text, String(saved.keys.length)]);
                    }).catch(failed => done([String(failed)]));""", Files.readString(file));
            assertThat(told).as(file.toString()).hasSize(5);
            assertThat(told.get(1)).as(file.toString()).isEqualTo(told.get(0));
            assertThat(told.get(2)).as(file.toString()).isEqualTo(told.get(0));
            assertThat(told.get(3).lines().count()).as("a key for each line").isEqualTo(Long.parseLong(told.get(4)));
        }
    }
}
