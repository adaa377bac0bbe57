package sledwright.cli;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import sledwright.browser.Browser;
import sledwright.web.Servers;

/**
 * Makes the pictures of the documents that {@code docs} shows: {@code mvn -q test-compile exec:exec@pictures}. Another folder than
 * {@code docs/pictures} may be given.
 */
public final class Pictures {

    private static final String QUOTE = "scenarios/small-web-node.yaml";
    private static final float PAPER_DPI = 62;
    private static final float SHEET_DPI = 80;
    private static final int DRAWING_WIDTH = 696;
    private static final int SHOWN_HEIGHT = 1000;
    private static final double SCREEN_SCALE = 0.62;

    private final Path folder;
    private final Browser browser;

    private Pictures(Path folder, Browser browser) {
        this.folder = folder;
        this.browser = browser;
    }

    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createDirectories(Path.of(arguments.length > 0 && !arguments[0].isBlank() ? arguments[0] : "docs/pictures"));
        try (Browser browser = Browser.start()) {
            Pictures pictures = new Pictures(folder, browser);
            pictures.paper("quote-paper", List.of(0, 1, 2), "quote", QUOTE, "--format", "pdf");
            pictures.screen("quote-screen", Browser.DESKTOP, false, SCREEN_SCALE, "quote", QUOTE, "--format", "html");
            pictures.screen("quote-dark-phone", Browser.PHONE, true, 1, "quote", QUOTE, "--format", "html");
            pictures.paper("quote-internal", List.of(0, 3), "quote", QUOTE, "--format", "pdf", "--internal");
            pictures.paper("sheet-paper", List.of(0, 1), SHEET_DPI, "sheet", "scenarios/file-server.yaml", "--format", "pdf");
            pictures.page("page-phone-dark", Browser.PHONE, true, 1, "#require.cores=20&require.memory_gb=256");
            Views.make(folder, browser);
            pictures.drawing("sheet-upgrade", "sheet", "scenarios/sled-in-place.yaml", "--format", "svg");
        }
        // The server of the pages would wait for further questions.
        System.exit(0);
    }

    /** The page of the server with what is wished behind {@code #}. */
    private void page(String name, int width, boolean dark, double scale, String wishes) throws IOException {
        browser.visit(Servers.demo().address() + wishes).screen(width, dark)
                .until("document.querySelector('.seal') && (document.querySelector('.way') || document.querySelector('.spot') && document.querySelector('.step'))");
        Files.write(folder.resolve(name + ".png"), browser.picture(SHOWN_HEIGHT, scale));
    }

    private static byte[] result(String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = Run.into(out, Map.of(), false, arguments);
        if (run.code() != ExitCode.DONE && run.code() != ExitCode.NO_VALID_BUILD) {
            throw new IllegalStateException(run.err());
        }
        return out.toByteArray();
    }

    /** The top of a page as a screen shows it. */
    private void screen(String name, int width, boolean dark, double scale, String... arguments) throws IOException {
        browser.show(new String(result(arguments), StandardCharsets.UTF_8)).screen(width, dark);
        Files.write(folder.resolve(name + ".png"), browser.picture(SHOWN_HEIGHT, scale));
    }

    /** A drawing by itself. */
    private void drawing(String name, String... arguments) throws IOException {
        String svg = new String(result(arguments), StandardCharsets.UTF_8);
        String html = "<!DOCTYPE html><html lang=\"en\"><title>Drawing</title><style>body { margin: 8px; width: 680px; } svg { display: block; }</style>"
                + svg.substring(svg.indexOf("<svg")) + "</html>";
        browser.show(html).screen(DRAWING_WIDTH, false);
        Files.write(folder.resolve(name + ".png"), browser.picture(Math.round(Double.parseDouble(svg.replaceAll("(?s).*?<svg[^>]* height=\"([0-9.]+)\".*", "$1"))) + 16, 1));
    }

    /** Sheets of paper side by side. */
    private void paper(String name, List<Integer> sheets, String... arguments) throws IOException {
        paper(name, sheets, PAPER_DPI, arguments);
    }

    private void paper(String name, List<Integer> sheets, float dpi, String... arguments) throws IOException {
        try (PDDocument document = Loader.loadPDF(result(arguments))) {
            PDFRenderer renderer = new PDFRenderer(document);
            renderer.setRenderingHints(new RenderingHints(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON));
            List<BufferedImage> images = new ArrayList<>();
            for (int sheet : sheets) {
                if (sheet < document.getNumberOfPages()) {
                    images.add(renderer.renderImageWithDPI(sheet, dpi, ImageType.GRAY));
                }
            }
            ImageIO.write(beside(images), "png", folder.resolve(name + ".png").toFile());
        }
    }

    private static BufferedImage beside(List<BufferedImage> images) {
        int gap = 8;
        int width = images.stream().mapToInt(BufferedImage::getWidth).sum() + gap * (images.size() - 1);
        BufferedImage all = new BufferedImage(width, images.get(0).getHeight(), BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D canvas = all.createGraphics();
        canvas.setColor(Color.GRAY);
        canvas.fillRect(0, 0, width, all.getHeight());
        int left = 0;
        for (BufferedImage image : images) {
            canvas.drawImage(image, left, 0, null);
            left += image.getWidth() + gap;
        }
        canvas.dispose();
        return all;
    }
}
