package sledwright.report.sheet;

/** A rectangle on a drawing, its top left corner first. */
public record Box(double x, double y, double width, double height) {

    private static final double HAIR = 1e-6;

    public double right() {
        return x + width;
    }

    public double bottom() {
        return y + height;
    }

    Box inset(double across, double down) {
        return new Box(x + across, y + down, width - 2 * across, height - 2 * down);
    }

    boolean holds(Box other) {
        return other.x >= x - HAIR && other.y >= y - HAIR && other.right() <= right() + HAIR && other.bottom() <= bottom() + HAIR;
    }

    boolean overlaps(Box other) {
        return x < other.right() - HAIR && other.x < right() - HAIR && y < other.bottom() - HAIR && other.y < bottom() - HAIR;
    }
}
