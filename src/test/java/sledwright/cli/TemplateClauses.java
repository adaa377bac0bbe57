package sledwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The fixed texts of a document's template: what stands between tags and directives, with a blank for each expression. */
final class TemplateClauses {

    private static final Pattern UNSEEN = Pattern.compile("(?s)<#--.*?-->|<!--.*?-->|<(style|script)\\b.*?</\\1>|<#assign\\b.*?</#assign>");
    private static final Pattern EXPRESSION = Pattern.compile("\\$\\{[^}]*}");
    /** They may stand within a tag, too. */
    private static final Pattern DIRECTIVE = Pattern.compile("</?[#@][^>]*>");
    private static final String CUT = "\u0001";
    private static final Pattern TAG = Pattern.compile("</?[a-zA-Z!][^<>]*>|" + CUT);
    /** Two words of letters in a row: less is no clause. */
    private static final Pattern CLAUSE = Pattern.compile("[a-z]{2,} [a-z]{2,}");

    private TemplateClauses() {
    }

    static List<String> of(Path template) throws IOException {
        String seen = DIRECTIVE.matcher(EXPRESSION.matcher(UNSEEN.matcher(Files.readString(template)).replaceAll("")).replaceAll("%s")).replaceAll(CUT);
        return Stream.of(TAG.split(seen)).map(text -> text.replaceAll("\\s+", " ").strip()).filter(text -> CLAUSE.matcher(text).find()).distinct().toList();
    }
}
