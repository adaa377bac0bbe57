package sledwright.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.transcoder.SVGAbstractTranscoder;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import sledwright.browser.Browser;
import sledwright.browser.DocumentChecks;
import sledwright.browser.InBrowser;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Paper;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.generator.time.Deadline;
import sledwright.planner.StockDraw;
import sledwright.planner.upgrade.Installed;
import sledwright.planner.upgrade.Upgrade;
import sledwright.planner.upgrade.Upgrader;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pdf;
import sledwright.report.sheet.BoardView.State;
import sledwright.rules.Order;
import sledwright.samples.Answers;
import sledwright.samples.Samples;

/** The sheet as a page, on paper and as a picture. */
class SheetPagesTest {

    private static final Catalog SHOP = CatalogReader.read(Path.of("catalogs/heronfold-yard"), new Faults()).orElseThrow();
    private static final float FOOT = 40;
    private static final String HOSTILE = "<script>alert('1')</script> \"a\" & b \u0007\ud800";

    static Stream<Platform> demoPlatformsOfEveryShape() {
        Set<List<Integer>> shapes = new HashSet<>();
        return SHOP.platforms().stream().filter(platform -> shapes.add(List.of(platform.board().sockets(), platform.board().channels(),
                platform.board().slotsPerChannel())));
    }

    private static PageHead head(SheetView view) {
        return new PageHead(SheetHtml.title(view), SheetHtml.subject(view), "Reedmere Stores", LocalDate.of(2025, 3, 31), Paper.A4);
    }

    private static String html(SheetView view) {
        return SheetHtml.of(view, head(view)).replace('\u00a0', ' ');
    }

    private static SheetView unequal() {
        return Sheets.ofAlternative(Answers.order(Answers.ASKED.withMachines(3), Answers.cool(), Answers.coolHeavier(), Answers.coolHeavier()), 1);
    }

    /** A machine of the platform with its hottest kit, every channel filled with its first module. */
    private static SheetView typical(Platform platform) {
        Processor processor = SHOP.processors().stream().filter(part -> platform.processors().generations().contains(part.generation())
                && isSold(part.sku(), platform.board().sockets())).findFirst().orElseThrow();
        MemoryModule module = SHOP.modules().stream().filter(part -> part.generation().equals(platform.memory().generation())
                && platform.memory().speedMts(part.type(), part.ranks(), 1).isPresent()
                && isSold(part.sku(), platform.board().sockets() * platform.board().channels())).findFirst().orElseThrow();
        CoolingKit kit = platform.cooling().get(platform.cooling().size() - 1);
        Build build = Samples.machine(platform).processors(platform.board().sockets(), processor).cooling(kit).channels(platform.board().channels(), module).build();
        return Sheets.ofBuild(StockDraw.of(List.of(build), Request.named("bench"), SHOP).order());
    }

    /** Without blanks: where lines end is nobody's business. */
    private static String text(PDDocument document) throws IOException {
        return close(new PDFTextStripper().getText(document));
    }

    private static String close(String text) {
        return text.replaceAll("[\\s\u00a0]+", "");
    }

    private static boolean isSold(String sku, int units) {
        return SHOP.lots(sku).stream().mapToInt(Lot::available).sum() >= units;
    }

    @Test
    @InBrowser
    void isSoundInABrowser(Browser browser) {
        DocumentChecks.assertSound(browser, html(unequal()));
        assertThat(browser.text()).contains("Bench sheet: render node, alternative 1", "2 of 3 machines", "Put 4 x R16 into slots 1A1, 1B1, 1C1, 1D1.");
    }

    @Test
    void namesAreEscaped() throws ParserConfigurationException, IOException, SAXException {
        MemoryModule hostile = new MemoryModule("R<&>\"16", HOSTILE, "DDR4", new MemoryModule.Kind(Answers.R16.type(), 16, 2, 4), 2,
                new MemoryModule.Rating(2400, 1.2, 4));
        Build build = Samples.machine(Answers.BOX).channels(4, hostile).build();
        Catalog shop = Samples.catalog(List.of(Answers.BOX), List.of(Samples.P10), List.of(hostile), Samples.lot("BOX", "B", 1, 1), Samples.lot("P10", "<lot>", 2, 1),
                Samples.lot("LOW", "H", 2, 1), Samples.lot("PAIR", "W", 2, 1), Samples.lot("R<&>\"16", "M", 8, 1));
        SheetView view = Sheets.ofBuild(StockDraw.of(List.of(build), Request.named(HOSTILE), shop).order());
        String html = html(view);
        assertThat(html).doesNotContain("<script", "R<&>", "<lot>").contains("&lt;lot&gt;", "&lt;script&gt;");
        parse(html.substring(html.indexOf("<svg"), html.indexOf("</svg>") + 6));
        assertThat(texts(SheetSvg.of(view))).contains("R<&>\"16");
    }

    @ParameterizedTest
    @MethodSource("demoPlatformsOfEveryShape")
    void aMachineTakesBothSidesOfASheetOfPaper(Platform platform) throws IOException {
        SheetView view = typical(platform);
        try (PDDocument document = Loader.loadPDF(Pdf.of(html(view), head(view)))) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            String text = text(document);
            SheetView.Sheet sheet = view.sheets().get(0);
            sheet.moved().picks().forEach(pick -> assertThat(text).contains(close(pick.sku() + pick.description() + pick.lot() + pick.supplier() + pick.units())));
            sheet.work().handling().forEach(how -> assertThat(text).contains(close(how)));
            sheet.work().stages().forEach(stage -> stage.steps().forEach(step -> assertThat(text).contains(close(step))));
            SheetWords.expected(sheet.checked().expected()).forEach(row -> assertThat(text).contains(close(row.what() + row.expected())));
            sheet.checked().records().forEach(fields -> fields.labels().forEach(label -> assertThat(text).contains(close(label))));
            assertThat(text).contains(close("Serial number"), close("Memory test"), close("Firmware"));
            // The box of cautions comes before anything to do.
            view.cautions().forEach(caution -> assertThat(text.indexOf(close(caution))).as(caution).isBetween(0, text.indexOf(close("Parts to pick"))));
        }
    }

    /** Type is read at arm's length, that of the drawing, too. */
    @ParameterizedTest
    @MethodSource("demoPlatformsOfEveryShape")
    void noTypeIsSmallerThanNinePoints(Platform platform) throws IOException {
        SheetView view = typical(platform);
        try (PDDocument document = Loader.loadPDF(Pdf.of(html(view), head(view)))) {
            List<String> small = new ArrayList<>();
            PDFTextStripper sizes = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition letter) {
                    // The line at the foot of the page belongs to the paper, not to the sheet.
                    if (letter.getYDirAdj() < letter.getPageHeight() - FOOT && letter.getFontSizeInPt() < 8.99f) {
                        small.add(letter + " of " + letter.getFontSizeInPt());
                    }
                }
            };
            sizes.getText(document);
            assertThat(small).isEmpty();
        }
    }

    @Test
    void boardAndStepsOfAnUpgradeStandOnOnePage() throws IOException {
        Build before = Samples.machine(Answers.BOX).processors(1, Answers.COOL).cooling(Samples.LOW).channels(4, Answers.R16).build();
        Request request = Answers.ASKED.withRequire(Samples.require().cores(20).memoryGb(192).make()).withLimit(Samples.limit().make());
        Upgrader upgrader = new Upgrader(Answers.SHOP, request, Installed.of(before, 1, 0.5, request.limit(), Answers.SHOP));
        Upgrade upgrade = upgrader.answer(upgrader.findings(Deadline.never()), Deadline.never());
        SheetView view = Sheets.ofUpgrade(upgrade.plan().orElseThrow(), upgrade);
        for (Paper paper : Paper.values()) {
            PageHead head = new PageHead("a", "b", "Reedmere Stores", LocalDate.of(2025, 3, 31), paper);
            try (PDDocument document = Loader.loadPDF(Pdf.of(SheetHtml.of(view, head), head))) {
                assertThat(document.getNumberOfPages()).isEqualTo(2);
                PDFTextStripper back = new PDFTextStripper();
                back.setStartPage(2);
                assertThat(close(back.getText(document))).contains(close("Socket 1"), close("1. Power off"), close("First start"));
            }
        }
    }

    @Test
    void theTaggedPaperSaysWhatTheDrawingShows() throws IOException {
        SheetView view = Sheets.ofBuild(Answers.order(Answers.ASKED, Answers.hot()));
        try (PDDocument document = Loader.loadPDF(Pdf.of(html(view), head(view)))) {
            assertThat(document.getDocument().getObjectsByType(COSName.getPDFName("StructElem")))
                    .extracting(element -> ((COSDictionary) element.getObject()).getString(COSName.ALT, "")).anySatisfy(words -> assertThat(words)
                            .contains("Socket 1, P12: 1A1 (1) R16 16 GB, 1A2 (5) R16 16 GB, 1A3 empty", "2D3 covered."));
        }
    }

    @Test
    void everyKindOfMachineBeginsASheetOfItsOwn() throws IOException {
        SheetView view = unequal();
        try (PDDocument document = Loader.loadPDF(Pdf.of(html(view), head(view)))) {
            assertThat(document.getNumberOfPages()).isEqualTo(4);
            PDFTextStripper second = new PDFTextStripper();
            second.setStartPage(3);
            assertThat(second.getText(document)).contains("1 of 3 machines").doesNotContain("2 of 3 machines");
        }
    }

    /** As much as a catalogue may name, nearly. */
    @Test
    void aDrawingThatIsHigherThanPaperIsMadeSmaller() throws IOException {
        Platform platform = Samples.platform().counts(8).channels(12, 8).make();
        SheetView view = Sheets.ofBuild(Order.of(List.of(Samples.machine(platform).processors(8, Samples.P10).channels(12, Samples.R16).build()), List.of(),
                Request.named("large"), Answers.SHOP));
        String page = html(view);
        assertThat(page).containsPattern("#board-1 \\{ width: [0-9.]+mm; height: 255.76mm; }");
        assertThat(Pdf.of(page, head(view))).isNotEmpty();
    }

    private static Document parse(String xml) throws ParserConfigurationException, IOException, SAXException {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }

    private static List<String> texts(String svg) throws ParserConfigurationException, IOException, SAXException {
        NodeList texts = parse(svg).getElementsByTagName("text");
        return IntStream.range(0, texts.getLength()).mapToObj(i -> texts.item(i).getTextContent().replace('\u00a0', ' ')).toList();
    }

    @Test
    void thePictureHoldsEveryTextOfTheDrawing() throws ParserConfigurationException, IOException, SAXException {
        String svg = SheetSvg.of(unequal());
        assertThat(texts(svg)).contains("2 of 3 machines", "1 of 3 machines", "1A1", "2D3", "R16B", "R16", "16 GB", "empty");
        assertThat(parse(svg).getElementsByTagName("desc").item(0).getTextContent().replace('\u00a0', ' ')).contains("Socket 1, P10: 1A1 (1) R16B 16 GB");
    }

    /** The picture in shades of grey, three pixels for each unit. */
    private static BufferedImage picture(String svg) throws TranscoderException {
        BufferedImage[] drawn = new BufferedImage[1];
        ImageTranscoder transcoder = new ImageTranscoder() {
            @Override
            public BufferedImage createImage(int width, int height) {
                return new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
            }

            @Override
            public void writeImage(BufferedImage image, TranscoderOutput output) {
                drawn[0] = image;
            }
        };
        transcoder.setTranscodingHints(Map.of(SVGAbstractTranscoder.KEY_WIDTH, (float) (3 * BoardGrid.WIDTH), ImageTranscoder.KEY_BACKGROUND_COLOR, java.awt.Color.WHITE));
        transcoder.transcode(new TranscoderInput(new StringReader(svg)), null);
        return drawn[0];
    }

    /** The share of dark pixels in a part of the picture. */
    private static double dark(BufferedImage picture, Box box) {
        return darkBeside(List.of(), picture, box);
    }

    private static double darkBeside(List<Box> texts, BufferedImage picture, Box box) {
        int count = 0;
        int dark = 0;
        for (int x = (int) (3 * box.x()); x < 3 * box.right(); x++) {
            for (int y = (int) (3 * box.y()); y < 3 * box.bottom(); y++) {
                Box pixel = new Box(x / 3.0, y / 3.0, 1 / 3.0, 1 / 3.0);
                if (texts.stream().anyMatch(text -> BoardDrawingTest.overlap(pixel, text))) {
                    continue;
                }
                count++;
                dark += picture.getRaster().getSample(x, y, 0) < 160 ? 1 : 0;
            }
        }
        return (double) dark / count;
    }

    @Test
    void statesTellThemselvesApartInBlackAndWhite() throws TranscoderException {
        Build build = Samples.machine(Answers.BOX).processors(1, Answers.COOL).cooling(Answers.DEEP).channels(4, Answers.R16).build();
        BoardView board = BoardView.of(build, List.of());
        BoardDrawing drawing = BoardDrawing.of(List.of(new BoardDrawing.Captioned("", board)));
        BufferedImage picture = picture(BoardSvg.file(drawing, "board", "slots"));
        for (BoardDrawing.Slot slot : drawing.slots()) {
            Box box = slot.box();
            State state = slot.place().state();
            // Along the upper edge there is line alone, inside and beside its texts nothing but hatching.
            double edge = dark(picture, new Box(box.x() + 4, box.y() - 0.4, box.width() - 8, 0.8));
            double inside = darkBeside(slot.shapes().stream().map(Shape::box).toList(), picture, box.inset(3, 3));
            assertThat(inside).as("hatching of %s, %s", slot.place().name(), state).isBetween(state == State.COVERED ? 0.1 : 0, state == State.COVERED ? 0.5 : 0.02);
            switch (state) {
                case FILLED -> assertThat(edge).as("thick line").isGreaterThan(0.9);
                case NO_PROCESSOR -> assertThat(edge).as("dots").isBetween(0.1, 0.6);
                default -> assertThat(edge).as("thin line of %s", state).isBetween(0.2, 1.0);
            }
        }
        assertThat(drawing.slots()).extracting(slot -> slot.place().state()).contains(State.values());
    }
}
