package sledwright.restock;

/**
 * One course of events: the orders of the horizon as they come.
 *
 * @param classes the class of each order, by number
 * @param days    the day of each order, ascending
 */
record Course(int[] classes, double[] days) {

    int orders() {
        return classes.length;
    }
}
