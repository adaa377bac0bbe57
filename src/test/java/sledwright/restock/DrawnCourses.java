package sledwright.restock;

import java.util.ArrayList;
import java.util.List;
import sledwright.domain.Catalog;
import sledwright.domain.RestockRequest;

/** The courses that a plan is made on, and what it says of itself, for tests elsewhere. */
public final class DrawnCourses {

    /** An order of a class, and the day on which it comes. */
    public record Drawn(int demandClass, double day) {
    }

    private DrawnCourses() {
    }

    /** Those of a seed, in the order in which orders come. */
    public static List<List<Drawn>> of(RestockRequest request, long seed) {
        List<List<Drawn>> all = new ArrayList<>();
        for (Course course : Courses.draw(request, 3 * request.samples(), 2 * seed + 1).subList(0, request.samples())) {
            List<Drawn> orders = new ArrayList<>();
            for (int i = 0; i < course.orders(); i++) {
                orders.add(new Drawn(course.classes()[i], course.days()[i]));
            }
            all.add(orders);
        }
        return all;
    }
}
