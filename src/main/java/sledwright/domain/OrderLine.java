package sledwright.domain;

/**
 * One line of an order.
 *
 * @param name     unique within the order
 * @param request  what each machine of the line is asked for, and how many; its parts on hand are the order's
 * @param priority what one machine of the line counts when stock is short; the higher the more
 * @param uniform  whether all machines of the line are one build
 */
public record OrderLine(String name, Request request, int priority, boolean uniform) {

    public static final int LEAST_PRIORITY = 1;
    public static final int MOST_PRIORITY = 1000;

    public OrderLine {
        if (priority < LEAST_PRIORITY || priority > MOST_PRIORITY) {
            throw new IllegalArgumentException("line %s has priority %s".formatted(name, priority));
        }
    }

    /** Whether several machines have to be one build, so that they come together or not at all. */
    public boolean isTogether() {
        return uniform && machines() > 1;
    }

    /** Machines that the line asks for. */
    public int machines() {
        return request.machines();
    }
}
