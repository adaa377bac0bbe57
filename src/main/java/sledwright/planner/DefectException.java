package sledwright.planner;

/** The program contradicts itself: a build that it is about to give out fails its own judgement. Never the user's doing. */
public final class DefectException extends RuntimeException {

    public DefectException(String message) {
        super(message);
    }
}
