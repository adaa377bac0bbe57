package sledwright.browser;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtensionContext.Store.CloseableResource;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptException;
import org.openqa.selenium.Keys;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;

/** A browser without a window that shows one document after the other. */
public final class Browser implements CloseableResource, AutoCloseable {

    static final Path PROGRAM = Path.of("/usr/bin/chromium");
    static final Path DRIVER = Path.of("/usr/bin/chromedriver");
    /** The narrowest screen that documents are laid out for, in CSS pixels. */
    public static final int PHONE = 360;
    public static final int DESKTOP = 1100;
    /** A name of this machine for which the browser does not make the exceptions that it makes for the machine that it runs on. */
    public static final String IN_THE_NETWORK = "yard.example";

    private static final long BETWEEN_NANOS = Duration.ofMillis(25).toNanos();
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    private static final String AXE = script();
    /** Held, so that its level stays: it would warn that it has no own words for this version of the browser, which nothing here needs. */
    private static final Logger VERSIONS = Logger.getLogger("org.openqa.selenium.devtools");

    static {
        VERSIONS.setLevel(Level.SEVERE);
    }

    private final ChromeDriver driver;
    private final Path folder;

    private Browser(ChromeDriver driver, Path folder) {
        this.driver = driver;
        this.folder = folder;
    }

    public static boolean isInstalled() {
        return Files.isExecutable(PROGRAM) && Files.isExecutable(DRIVER);
    }

    /** Whoever starts one closes it; tests take theirs as a parameter. */
    public static Browser start() {
        try {
            Path folder = Files.createTempDirectory("browser");
            ChromeOptions options = new ChromeOptions().setBinary(PROGRAM.toFile()).addArguments("--headless", "--no-sandbox", "--disable-gpu",
                    // As little as pages need: browsers share two cores with what they are shown.
                    "--disable-software-rasterizer", "--num-raster-threads=1", "--disable-gpu-compositing", "--in-process-gpu",
                    "--disable-features=Translate,BackForwardCache,AcceptCHFrame,MediaRouter,OptimizationHints", "--disable-smooth-scrolling",
                    "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                    "--disable-extensions", "--disable-dev-shm-usage", "--hide-scrollbars", "--host-resolver-rules=MAP %s 127.0.0.1".formatted(IN_THE_NETWORK), "--force-color-profile=srgb", "--user-data-dir=" + folder.resolve("profile"));
            // Named here, so that nothing looks for a driver elsewhere.
            ChromeDriverService service = new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile()).usingAnyFreePort()
                    .withLogFile(new File("/dev/null")).build();
            ChromeDriver driver = new ChromeDriver(service, options);
            // A slow machine is no fault of a page.
            driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(2));
            // No event of focus reaches a page that the browser holds for unfocused, as newer ones do with pages in no window.
            driver.executeCdpCommand("Emulation.setFocusEmulationEnabled", Map.of("enabled", true));
            return new Browser(driver, folder);
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    /** Opens an address, light, on a wide screen. */
    public Browser visit(String address) {
        screen(DESKTOP, false);
        // The same page with another fragment would not be loaded again.
        driver.get("about:blank");
        driver.get(address);
        return this;
    }

    /** Types into the first element that a selector finds, in place of what stands there. */
    public Browser type(String selector, CharSequence text) {
        driver.findElement(By.cssSelector(selector)).sendKeys(Keys.chord(Keys.CONTROL, "a"), text);
        return this;
    }

    /** Keys for whatever has the focus. */
    public Browser press(CharSequence... keys) {
        driver.switchTo().activeElement().sendKeys(keys);
        return this;
    }

    /** Keys one after the other for whatever has the focus when each is pressed. */
    public Browser keys(CharSequence keys) {
        new Actions(driver).sendKeys(keys).perform();
        return this;
    }

    public Browser click(String selector) {
        driver.findElement(By.cssSelector(selector)).click();
        return this;
    }

    /** Chooses a file in a field for one. */
    public Browser upload(String selector, Path file) {
        driver.findElement(By.cssSelector(selector)).sendKeys(file.toAbsolutePath().toString());
        return this;
    }

    public Browser back() {
        driver.navigate().back();
        return this;
    }

    /** Waits until a script gives true. */
    public Browser until(String condition) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!holds(condition)) {
            if (System.nanoTime() > end) {
                throw new AssertionError("never: " + condition + "\n" + text());
            }
            LockSupport.parkNanos(BETWEEN_NANOS);
        }
        return this;
    }

    /** Whether a condition holds; one of something that is not there does not. */
    private boolean holds(String condition) {
        try {
            return (boolean) driver.executeScript("try { return !!(%s); } catch (absent) { return false; }".formatted(condition));
        } catch (JavascriptException leaving) {
            // The page was being left; what comes next is asked.
            return false;
        }
    }

    /** What a script hands to its last argument. */
    public Object answer(String script, Object... arguments) {
        return driver.executeAsyncScript(script, arguments);
    }

    /** What the browser complains of since this was last asked, such as a script that its page does not allow. */
    public List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream().map(LogEntry::getMessage).toList();
    }

    private static String script() {
        try (InputStream in = Browser.class.getResourceAsStream("/axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Shows a document, light, on a wide screen. */
    public Browser show(String html) {
        try {
            Path page = Files.writeString(folder.resolve("page.html"), html);
            screen(DESKTOP, false);
            driver.get(page.toUri().toString());
            return this;
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    /** The screen's width in CSS pixels, and whether its user likes it dark. */
    public Browser screen(int width, boolean dark) {
        driver.executeCdpCommand("Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", 800, "deviceScaleFactor", 1, "mobile", width < 600));
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "screen",
                "features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
        return this;
    }

    /** The document as it is laid out for paper of that width in CSS pixels. */
    public Browser paper(int width) {
        screen(width, false);
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        return this;
    }

    /** The document as the browser prints it, as PDF. */
    public byte[] printed() {
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "", "features", List.of()));
        return Base64.getDecoder().decode((String) driver.executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true)).get("data"));
    }

    /** CSS pixels by which the document is wider than the screen, so that it scrolls sideways; 0 is what a reader wants. */
    public long sidewaysScroll() {
        return ((Number) driver.executeScript("return document.documentElement.scrollWidth - document.documentElement.clientWidth")).longValue();
    }

    /** Words of the document that end on another line than they begin, though they are no longer than a line should hold. */
    @SuppressWarnings("unchecked")
    public List<String> brokenWords() {
        return (List<String>) driver.executeScript("""
                const broken = [];
                const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
                while (texts.nextNode()) {
                    const text = texts.currentNode;
                    if (!text.parentElement.checkVisibility() || text.parentElement.closest('svg, script, thead')) continue;
                    for (const word of text.data.matchAll(/[\\p{L}\\p{N}.,]+/gu)) {
                        if (word[0].length > 20) continue;
                        const range = document.createRange();
                        range.setStart(text, word.index);
                        range.setEnd(text, word.index + word[0].length);
                        const lines = new Set(Array.from(range.getClientRects()).filter(box => box.width > 0).map(box => Math.round(box.top)));
                        if (lines.size > 1) broken.push(word[0]);
                    }
                }
                return broken;""");
    }

    /** What hinders people with disabilities, by axe-core: a line for each rule and element. */
    @SuppressWarnings("unchecked")
    public List<String> barriers() {
        if (!(boolean) driver.executeScript("return 'axe' in window")) {
            driver.executeScript(AXE);
        }
        return (List<String>) driver.executeAsyncScript("""
                const done = arguments[arguments.length - 1];
                axe.run(document, { resultTypes: ['violations'], rules: { 'target-size': { enabled: true } } }).then(found => done(found.violations.flatMap(
                    violation => violation.nodes.map(node => violation.id + ': ' + node.target.join(' ') + ': ' + node.failureSummary))),
                    failed => done(['axe-core failed: ' + failed]));""");
    }

    /** Addresses of everything that the document made the browser load. */
    @SuppressWarnings("unchecked")
    public List<String> loaded() {
        return (List<String>) driver.executeScript("return performance.getEntriesByType('resource').map(entry => entry.name)");
    }

    /** What a script gives, such as {@code return document.title}. */
    public Object ask(String script) {
        return driver.executeScript(script);
    }

    /** The text that can be seen; its figures and units stand a plain blank apart. */
    public String text() {
        return ((String) driver.executeScript("return document.body.innerText")).replace('\u00a0', ' ');
    }

    /**
     * A picture of the document as PNG, from where it is scrolled to.
     *
     * @param mostHeight CSS pixels that are shown, or all of it
     * @param scale      pixels of the picture for one of the document
     */
    public byte[] picture(long mostHeight, double scale) {
        long height = (long) driver.executeScript("return Math.ceil(document.documentElement.scrollHeight - window.scrollY)");
        long top = (long) driver.executeScript("return Math.round(window.scrollY)");
        Number width = (Number) driver.executeScript("return window.innerWidth");
        Map<String, Object> clip = Map.of("x", 0, "y", top, "width", width, "height", Math.min(height, mostHeight), "scale", scale);
        return Base64.getDecoder().decode((String) driver.executeCdpCommand("Page.captureScreenshot",
                Map.of("format", "png", "captureBeyondViewport", true, "clip", clip)).get("data"));
    }

    @Override
    public void close() {
        driver.quit();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        } catch (IOException | UncheckedIOException stillUsed) {
            // A temporary folder that the system clears.
        }
    }
}
