package sledwright.words;

/** What somebody may do next; how that is done depends on the place where it is said. */
public enum Advice implements Variable {

    /** Ask again with more time. */
    MORE_TIME;

    @Override
    public String in(Manner manner) {
        return manner.advice(this);
    }

    @Override
    public String toString() {
        return in(Manner.COMMAND_LINE);
    }
}
