package sledwright.restock;

import java.util.Arrays;

/**
 * One course of events: the orders of the horizon as they come.
 *
 * @param classes the class of each order, by number
 * @param days    the day of each order, ascending
 */
record Course(int[] classes, double[] days) {

    /** Whether any order of a class comes. */
    boolean has(int k) {
        return Arrays.stream(classes).anyMatch(of -> of == k);
    }

    int orders() {
        return classes.length;
    }
}
