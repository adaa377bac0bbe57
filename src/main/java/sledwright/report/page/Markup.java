package sledwright.report.page;

/** Markup that the program made itself, such as a drawing; every other text is escaped. */
public record Markup(String html) {
}
