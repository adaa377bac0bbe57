package sledwright.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import sledwright.report.chart.Chart.Line;
import sledwright.report.chart.Chart.Mark;
import sledwright.report.chart.Chart.Spot;

class SvgChartTest {

    private static final String HOSTILE = "a <script>\"&' \u202e\u0007";

    private static Chart chart(Line... lines) {
        return new Chart("Cores by price", "A staircase.", "Price, EUR", "Cores", Locale.ENGLISH, false, List.of(lines));
    }

    private static Line line(String name, double... points) {
        return new Line(name, IntStream.range(0, points.length / 2).mapToObj(i -> Spot.of(points[2 * i], points[2 * i + 1], "point " + i)).toList());
    }

    private static Document read(String svg) {
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        } catch (Exception broken) {
            throw new AssertionError(svg, broken);
        }
    }

    private static List<Element> all(Document document, String tag, String className) {
        NodeList found = document.getElementsByTagName(tag);
        return IntStream.range(0, found.getLength()).mapToObj(i -> (Element) found.item(i))
                .filter(element -> List.of(element.getAttribute("class").split(" ")).contains(className)).toList();
    }

    @Test
    void stairsGoAlongBeforeTheyRise() {
        Document svg = read(SvgChart.of(chart(line("all", 100, 10, 200, 20, 500, 30)), SvgChart.Use.PICTURE));
        String path = all(svg, "path", "line").get(0).getAttribute("d");
        assertThat(path).matches("M\\S+ \\S+H\\S+ V\\S+H\\S+ V\\S+H\\S+");
        List<Element> ticks = all(svg, "text", "soft");
        assertThat(ticks).extracting(Element::getTextContent).contains("0", "10", "20", "30", "100", "500");
        assertThat(svg.getDocumentElement().getAttribute("role")).isEqualTo("img");
        assertThat(svg.getDocumentElement().getAttribute("aria-label")).isEqualTo("Cores by price. A staircase.");
    }

    @Test
    void whatIsKnownWithinARangeIsALineWithItsBand() {
        Line spread = new Line("all", line("all", 100, 10, 200, 20, 500, 30).spots(), List.of(new Chart.Range(5, 15), new Chart.Range(17, 23), new Chart.Range(25, 35)));
        Document svg = read(SvgChart.of(chart(spread), SvgChart.Use.PICTURE));
        assertThat(all(svg, "path", "band")).singleElement().satisfies(band -> assertThat(band.getAttribute("d")).matches("M\\S+ \\S+(L\\S+ \\S+?){5}Z"));
        assertThat(all(svg, "path", "line")).extracting(line -> line.getAttribute("d")).satisfiesExactly(
                bars -> assertThat(bars).matches("(M\\S+ [^V]+V[^M]+){3}"), line -> assertThat(line).matches("M\\S+ [^L]+(L\\S+ [^L]+){2}"));
        assertThat(all(svg, "text", "soft")).extracting(Element::getTextContent).as("the axis holds the ranges").contains("40");
        assertThatThrownBy(() -> new Line("all", spread.spots(), spread.ranges().subList(0, 1))).hasMessage("3 spots and 1 ranges");
    }

    @Test
    void linesDifferWithoutColour() {
        Document svg = read(SvgChart.of(chart(line("one", 100, 10, 200, 20), line("other", 100, 5, 300, 30)), SvgChart.Use.PICTURE));
        assertThat(all(svg, "path", "line")).extracting(line -> line.getAttribute("stroke-dasharray")).containsExactly("", "7 3");
        assertThat(all(svg, "text", "ink")).extracting(Element::getTextContent).contains("one", "other");
        assertThat(IntStream.range(0, 20).mapToObj(i -> Look.of(i).dashes() + Look.of(i).shape(0, 0, 10)).distinct()).hasSize(20);
        assertThat(IntStream.range(0, 40).mapToObj(i -> Look.of(i).light() + Look.of(i).dashes() + Look.of(i).shape(0, 0, 10)).distinct()).hasSize(40);
    }

    @Test
    void marksHaveShapesAndWords() {
        Spot knee = new Spot(200, 20, "here", Optional.of("k"), Mark.DIAMOND, Optional.of("knee: 20 cores"), true);
        Spot best = new Spot(210, 21, "there", Optional.of("b"), Mark.TRIANGLE, Optional.of("best per unit: 21 cores"), false);
        Document svg = read(SvgChart.of(chart(new Line("all", List.of(Spot.of(100, 10, "first"), knee, best))), SvgChart.Use.LIVE));
        List<Element> calls = all(svg, "text", "call");
        assertThat(calls).extracting(Element::getTextContent).containsExactly("knee: 20 cores", "best per unit: 21 cores");
        double apart = Math.abs(Double.parseDouble(calls.get(0).getAttribute("y")) - Double.parseDouble(calls.get(1).getAttribute("y")));
        assertThat(apart).as("words do not lie on each other").isGreaterThanOrEqualTo(16);
        assertThat(all(svg, "g", "spot")).extracting(spot -> spot.getAttribute("data-link")).containsExactly("", "k", "b");
        assertThat(all(svg, "g", "spot")).extracting(spot -> spot.getAttribute("aria-label")).containsExactly("first", "here", "there");
        assertThat(all(svg, "g", "hollow")).hasSize(1);
        assertThat(svg.getDocumentElement().getAttribute("role")).as("what holds what can be reached is no image").isEqualTo("group");
    }

    @Test
    void aFileHoldsItsChartsOneBelowTheOther() {
        Chart one = chart(line("all", 100, 10, 200, 20));
        Document svg = read(SvgChart.file("two charts", List.of(one, one)));
        NodeList drawings = svg.getElementsByTagName("svg");
        assertThat(drawings.getLength()).isEqualTo(3);
        double height = Double.parseDouble(((Element) drawings.item(1)).getAttribute("height"));
        assertThat(((Element) drawings.item(2)).getAttribute("y")).isEqualTo(Svg.n(height));
        assertThat(svg.getDocumentElement().getAttribute("height")).isEqualTo(Svg.n(2 * height));
        assertThat(svg.getElementsByTagName("style").item(0).getTextContent()).contains("prefers-color-scheme: dark");
        assertThat(read(SvgChart.file("none", List.of())).getDocumentElement().getAttribute("height")).isEqualTo("0");
    }

    @Test
    void textsAreEscaped() {
        Chart hostile = new Chart(HOSTILE, HOSTILE, HOSTILE, HOSTILE, Locale.ENGLISH, true,
                List.of(new Line(HOSTILE, List.of(new Spot(1, 1, HOSTILE, Optional.of(HOSTILE), Mark.STAR, Optional.of(HOSTILE), true))), line(HOSTILE, 2, 2)));
        for (String svg : List.of(SvgChart.of(hostile, SvgChart.Use.LIVE), SvgChart.file(HOSTILE, List.of(hostile)))) {
            assertThat(svg).doesNotContain("<script").doesNotContain("\u202e").doesNotContain("\u0007");
            assertThat(read(svg).getDocumentElement().getAttribute("aria-label")).startsWith("a <script>\"&' \ufffd\ufffd");
        }
    }

    @Test
    void nothingIsNoChart() {
        assertThatThrownBy(() -> chart(line("none"))).isInstanceOf(IllegalArgumentException.class);
    }
}
