package sledwright.input;

/** Texts of the plainest kind, which nearly all are: what is asked of others need not be asked of them. */
final class Printable {

    private Printable() {
    }

    /** Whether a text has nothing but blanks and the letters, digits and signs of ASCII. */
    static boolean ascii(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (!ascii(text.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    static boolean ascii(char letter) {
        return letter >= ' ' && letter <= '~';
    }
}
