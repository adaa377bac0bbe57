package sledwright.cli;

import com.sun.source.tree.AnnotationTree;
import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** The texts of Java sources, as the compiler reads them: what several literals say in a row is one text, and comments are none. */
final class Clauses extends TreeScanner<Void, Void> {

    /** What only a mistake of the program's own makes it say. */
    private static final Set<String> DEFECTS = Set.of("IllegalArgumentException", "IllegalStateException", "ArithmeticException",
            "UnsupportedOperationException", "AssertionError", "DefectException", "requireNonNull");
    /** Laws of rules and words of exceptions that never leave the program; what it says of a machine are the violations. */
    private static final String HANDED_UP = "super";
    /** Words for the library that reads the command line are printed by {@code --help}; other annotations speak to the compiler. */
    private static final Set<String> SHOWN = Set.of("Command", "Option", "Parameters");
    /** Patterns say nothing. */
    private static final Set<String> MUTE = Set.of("compile", "matches", "replaceAll", "replaceFirst", "split", "ofPattern");
    /** Two words in a row: less is no clause. */
    private static final Pattern CLAUSE = Pattern.compile("[A-Za-z]{2,} [a-z]{2,}");
    /** What is said to a database. */
    private static final Pattern STATEMENT = Pattern.compile("\\b(SELECT|INSERT INTO|SET|WHERE|CREATE|DELETE FROM|VACUUM INTO|BEGIN|SAVEPOINT|RELEASE|ROLLBACK TO|ORDER BY|PRAGMA)\\b");
    /** What stands within a tag of HTML or SVG is for no reader. */
    private static final Pattern TAG = Pattern.compile("(?s)<style>.*?</style>|<[a-z/?!][^<>]*(?:>|$)|[a-z-]+=\"[^\"]*\"");
    /** What tests hand in, look for and replace in files, or explain to their readers; not what they expect to be said. */
    private static final Set<String> HANDED_IN = Set.of("writeString", "as", "fail", "describedAs", "request", "replace");

    private final List<String> texts = new ArrayList<>();
    private final Set<String> silent;
    private final boolean annotations;

    private Clauses(Set<String> silent, boolean annotations) {
        this.silent = silent;
        this.annotations = annotations;
    }

    /** What each source of the program may say to a user. */
    static Map<Path, List<String>> ofProgram(List<Path> sources) {
        Map<Path, List<String>> clauses = new TreeMap<>();
        of(sources, union(DEFECTS, MUTE, Set.of(HANDED_UP)), false).forEach((file, texts) -> clauses.put(file, texts.stream()
                .flatMap(text -> Arrays.stream(TAG.split(text))).filter(text -> CLAUSE.matcher(text).find() && !STATEMENT.matcher(text).find()).distinct().toList()));
        return clauses;
    }

    /** What each source of a test may expect to be said. */
    static Map<Path, List<String>> ofTests(List<Path> sources) {
        return of(sources, HANDED_IN, true);
    }

    @SafeVarargs
    private static Set<String> union(Set<String>... sets) {
        return Stream.of(sets).flatMap(Set::stream).collect(Collectors.toUnmodifiableSet());
    }

    private static Map<Path, List<String>> of(List<Path> sources, Set<String> silent, boolean annotations) {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        Map<Path, List<String>> found = new TreeMap<>();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            JavacTask task = (JavacTask) compiler.getTask(null, files, null, List.of("-proc:none"), null, files.getJavaFileObjectsFromPaths(sources));
            for (CompilationUnitTree unit : task.parse()) {
                Clauses clauses = new Clauses(silent, annotations);
                clauses.scan(unit, null);
                found.put(Path.of(unit.getSourceFile().toUri()), clauses.texts);
            }
            return found;
        } catch (IOException gone) {
            throw new UncheckedIOException(gone);
        }
    }

    @Override
    public Void visitLiteral(LiteralTree literal, Void none) {
        if (literal.getKind() == Tree.Kind.STRING_LITERAL) {
            texts.add((String) literal.getValue());
        }
        return null;
    }

    @Override
    public Void visitBinary(BinaryTree sum, Void none) {
        if (sum.getKind() != Tree.Kind.PLUS) {
            return super.visitBinary(sum, none);
        }
        List<Tree> summands = new ArrayList<>();
        flatten(sum, summands);
        StringBuilder row = new StringBuilder();
        for (Tree summand : summands) {
            Optional<String> literal = literal(summand);
            if (literal.isPresent()) {
                row.append(literal.get());
            } else {
                end(row);
                scan(summand, none);
            }
        }
        end(row);
        return null;
    }

    private void end(StringBuilder row) {
        if (!row.isEmpty()) {
            texts.add(row.toString());
            row.setLength(0);
        }
    }

    private static void flatten(Tree tree, List<Tree> summands) {
        if (tree instanceof BinaryTree sum && sum.getKind() == Tree.Kind.PLUS) {
            flatten(sum.getLeftOperand(), summands);
            flatten(sum.getRightOperand(), summands);
        } else {
            summands.add(tree);
        }
    }

    private static Optional<String> literal(Tree tree) {
        return tree instanceof LiteralTree literal && literal.getKind() == Tree.Kind.STRING_LITERAL
                ? Optional.of((String) literal.getValue()) : Optional.empty();
    }

    @Override
    public Void visitNewClass(NewClassTree made, Void none) {
        return silent.contains(made.getIdentifier().toString()) ? null : super.visitNewClass(made, none);
    }

    @Override
    public Void visitMethodInvocation(MethodInvocationTree call, Void none) {
        String name = call.getMethodSelect().toString();
        if (silent.contains(name.substring(name.lastIndexOf('.') + 1))) {
            return scan(call.getMethodSelect(), none);
        }
        return super.visitMethodInvocation(call, none);
    }

    @Override
    public Void visitAnnotation(AnnotationTree annotation, Void none) {
        return annotations || SHOWN.contains(annotation.getAnnotationType().toString()) ? super.visitAnnotation(annotation, none) : null;
    }
}
