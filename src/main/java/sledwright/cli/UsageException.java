package sledwright.cli;

/** Arguments that cannot be followed; the message says which and what would be right. */
final class UsageException extends RuntimeException {

    UsageException(String message) {
        super(message);
    }
}
