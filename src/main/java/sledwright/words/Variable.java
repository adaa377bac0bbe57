package sledwright.words;

/** What places write differently. As a string it reads as on a command line. */
public sealed interface Variable permits Advice, Day, Measure, Sum {

    String in(Manner manner);
}
