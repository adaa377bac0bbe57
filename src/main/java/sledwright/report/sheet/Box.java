package sledwright.report.sheet;

/** A rectangle on a drawing, its top left corner first. */
public record Box(double x, double y, double width, double height) {

    public double right() {
        return x + width;
    }

    public double bottom() {
        return y + height;
    }

    Box inset(double across, double down) {
        return new Box(x + across, y + down, width - 2 * across, height - 2 * down);
    }
}
