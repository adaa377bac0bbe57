package sledwright.report.page;

import freemarker.cache.ClassTemplateLoader;
import freemarker.core.HTMLOutputFormat;
import freemarker.core.TemplateClassResolver;
import freemarker.template.Configuration;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Makes pages from templates, which are the {@code .ftlh} files beside this class. A page is one file that loads nothing from anywhere:
 * HTML and at the same time well-formed XML, which {@link Pdf} reads.
 */
public final class Pages {

    private static final Configuration TEMPLATES = templates();
    private static final String STYLE = resource("page.css");

    private Pages() {
    }

    private static Configuration templates() {
        Configuration templates = new Configuration(Configuration.VERSION_2_3_34);
        templates.setTemplateLoader(new ClassTemplateLoader(Pages.class, ""));
        templates.setObjectWrapper(new PageWrapper());
        templates.setOutputFormat(HTMLOutputFormat.INSTANCE);
        templates.setDefaultEncoding(StandardCharsets.UTF_8.name());
        templates.setLocale(Locale.ROOT);
        templates.setLocalizedLookup(false);
        templates.setNewBuiltinClassResolver(TemplateClassResolver.ALLOWS_NOTHING_RESOLVER);
        templates.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
        templates.setLogTemplateExceptions(false);
        templates.setWhitespaceStripping(true);
        return templates;
    }

    /**
     * A whole page.
     *
     * @param template its file name; it is written within {@code <@layout.page>} of {@code layout.ftlh}
     * @param model    what it shows, beside {@code head}
     */
    public static String html(String template, PageHead head, Map<String, ?> model) {
        Map<String, Object> all = new HashMap<>(model);
        all.put("head", head);
        all.put("style", new Markup(STYLE));
        all.put("paper", new Markup(paper(head)));
        return LongWords.breakable(filled(template, all));
    }

    /** A template with what it shows, such as a drawing. */
    public static String filled(String template, Map<String, ?> model) {
        StringWriter out = new StringWriter();
        try {
            TEMPLATES.getTemplate(template).process(model, out);
        } catch (IOException | TemplateException wrong) {
            throw new IllegalStateException("template %s cannot be filled in: %s".formatted(template, wrong.getMessage()), wrong);
        }
        return out.toString();
    }

    /**
     * A whole page that comes alive where scripts run: {@code NAME.ftlh}, with {@code NAME.css} behind the common style and the script
     * {@code NAME.js}, which alone may run.
     */
    public static String live(String name, PageHead head, Map<String, ?> model) {
        // A page is XML, too, where a script would otherwise be read for markup.
        String script = "/*<![CDATA[*/\n" + resource(name + ".js") + "/*]]>*/";
        Map<String, Object> all = new HashMap<>(model);
        all.put("more_style", new Markup(resource(name + ".css")));
        all.put("script", new Markup(script));
        all.put("script_hash", sha256(script));
        return html(name + ".ftlh", head, all);
    }

    private static String sha256(String text) {
        try {
            return Base64.getEncoder().encodeToString(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** The sheet of paper with a footer that distinguishes it from other sheets. */
    private static String paper(PageHead head) {
        String foot = "font-family: \"Noto Sans\"; font-size: 7.5pt; color: #55606b; vertical-align: top; padding-top: 4mm;";
        return ("@page { size: %s; margin: 17mm 18mm 20mm 18mm; @bottom-left { content: %s; %s } @bottom-right { content: counter(page)"
                + " \" / \" counter(pages); %s } }")
                .formatted(head.paper().cssName(), quoted(head.author() + "  \u00b7  " + head.title()), foot, foot);
    }

    /** A text as a style sheet holds it: every character by its number but plain letters and digits. */
    private static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        Harmless.text(text).codePoints().forEach(character -> {
            if (character < 0x80 && Character.isLetterOrDigit(character)) {
                quoted.appendCodePoint(character);
            } else {
                quoted.append("\\%06x".formatted(character));
            }
        });
        return quoted.append('"').toString();
    }

    private static String resource(String name) {
        try (InputStream in = Pages.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
