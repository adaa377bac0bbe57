package sledwright.report;

/** Words at the head of a line. */
final class Names {

    private Names() {
    }

    /** The same with a capital letter. */
    static String capital(String words) {
        return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
