package sledwright.generator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import sledwright.generator.memory.MemoryFloor;
import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryNeed;
import sledwright.generator.time.Deadline;

/**
 * The branches of a zone, the one whose bound promises most first. Few are ever looked at, so they are made only as their turn comes: rows
 * stand in the order of what they promise anywhere, the frames of a row in that of what they promise themselves, and nothing is asked about
 * what stands behind the best that has been found.
 */
final class Branches {

    /** A frame's choice of memory and a bound of what can come of it. */
    record Branch(Frame frame, MemoryOption option, MemoryNeed need, double bound) {
    }

    /** Bounds within a zone. */
    interface Bounds {

        /** Whether builds of a frame may lie inside. */
        boolean mayHold(Frame frame);

        /** Of a row from one of its frames on: never above the bound of any of them, and not less for a frame behind. */
        double ofRow(Frame from, MemoryOption option);

        /** Of a frame that may; infinite where nothing comes of it. */
        double of(Frame frame, MemoryOption option, MemoryFloor floor);
    }

    /**
     * All frames of a family with some memory.
     *
     * @param from  the first frame that anything comes of
     * @param bound in every zone
     * @param place of the row's first branch among all, which decides between equal bounds
     */
    record Row(Family family, MemoryOption option, int from, double bound, long place) {

        /** The rows of some families, the one that promises most first. */
        static List<Row> of(List<Family> families, Bounds everywhere) {
            List<Row> rows = new ArrayList<>();
            long place = 0;
            for (Family family : families) {
                for (MemoryOption option : family.options()) {
                    Row row = new Row(family, option, 0, Double.NEGATIVE_INFINITY, place).from(0, everywhere);
                    if (row != null) {
                        rows.add(row);
                    }
                    place += family.frames().size();
                }
            }
            rows.sort(Comparator.comparingDouble(Row::bound));
            return rows;
        }

        /** What is left of it from a frame on, with its bound in a zone; null where nothing comes of that. */
        Row from(int least, Bounds bounds) {
            for (int frame = least; frame < family.frames().size(); frame++) {
                Frame next = family.frames().get(frame);
                double leastBound = bounds.mayHold(next) ? bounds.ofRow(next, option) : Double.POSITIVE_INFINITY;
                if (leastBound < Double.POSITIVE_INFINITY) {
                    return new Row(family, option, frame, Math.max(bound, leastBound), place);
                }
            }
            return null;
        }
    }

    /** How much is known of what stands in the heap. */
    private enum Known { ROW, COARSE, FINE }

    /** A row, or its first frame alone. */
    private record Entry(Row row, double bound, Known known) implements Comparable<Entry> {

        @Override
        public int compareTo(Entry other) {
            int byBound = Double.compare(bound, other.bound);
            if (byBound != 0) {
                return byBound;
            }
            int rowsFirst = Boolean.compare(known != Known.ROW, other.known != Known.ROW);
            return rowsFirst != 0 ? rowsFirst : Long.compare(place(), other.place());
        }

        private long place() {
            return row.place + row.from;
        }

        Frame frame() {
            return row.family.frames().get(row.from);
        }

        MemoryOption option() {
            return row.option;
        }
    }

    private final PriorityQueue<Entry> heap = new PriorityQueue<>();
    private final List<Entry> given = new ArrayList<>();
    private final List<Row> rows;
    private final Bounds bounds;
    private final Deadline deadline;
    private int nextRow;

    /** @param rows of the families of the zone */
    Branches(List<Row> rows, Bounds bounds, Deadline deadline) {
        this.rows = rows;
        this.bounds = bounds;
        this.deadline = deadline;
    }

    /**
     * The next branch, with its closest bound; nothing comes of any of the others beyond it. After the deadline its bound may be a row's.
     *
     * @return null where none promises as much as an aim
     */
    Branch next(double aim) {
        for (Entry entry = least(aim); entry != null; entry = least(aim)) {
            if (entry.known == Known.FINE || deadline.isOver()) {
                given.add(entry);
                return new Branch(entry.frame(), entry.option(), entry.row.family.need(), entry.bound);
            }
            if (entry.known == Known.COARSE) {
                add(entry.row, Math.max(entry.bound, bounds.of(entry.frame(), entry.option(), entry.option().fine())), Known.FINE);
            } else {
                addFrame(entry);
                addRow(entry.row, entry.row.from + 1);
            }
        }
        return null;
    }

    /** Puts back what was given so far: more is wanted of it. */
    void again() {
        heap.addAll(given);
        given.clear();
    }

    /** What promises most of all, once every row is in the heap that promises as much; null where it does not promise an aim. */
    private Entry least(double aim) {
        for (; nextRow < rows.size(); nextRow++) {
            double bound = rows.get(nextRow).bound;
            if (bound > aim || !heap.isEmpty() && bound > heap.peek().bound) {
                break;
            }
            addRow(rows.get(nextRow), rows.get(nextRow).from);
        }
        return heap.isEmpty() || heap.peek().bound > aim ? null : heap.poll();
    }

    private void addRow(Row row, int from) {
        Row left = row.from(from, bounds);
        if (left != null) {
            add(left, left.bound, Known.ROW);
        }
    }

    private void addFrame(Entry entry) {
        Frame frame = entry.frame();
        if (entry.option().serves(frame.processor().memoryMts()) && frame.types().contains(entry.option().level().type())) {
            add(entry.row, bounds.of(frame, entry.option(), entry.option().coarse()), Known.COARSE);
        }
    }

    private void add(Row row, double bound, Known known) {
        if (bound < Double.POSITIVE_INFINITY) {
            heap.add(new Entry(row, bound, known));
        }
    }
}
