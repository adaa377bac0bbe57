package sledwright.cli;

/** What the process returns to its caller. */
public final class ExitCode {

    public static final int DONE = 0;
    /** A defect of the program. */
    public static final int DEFECT = 1;
    /** A wrong argument, or an output that cannot be written. */
    public static final int USAGE = 2;
    /** Something is wrong in an input file. */
    public static final int INPUT_FAULT = 3;
    /** No valid build exists, or the checked one is invalid. */
    public static final int NO_VALID_BUILD = 4;

    /** Nobody reads the results any more; as a shell counts it: 128 and the signal's number, 13. */
    public static final int READER_GONE = 141;

    private ExitCode() {
    }
}
