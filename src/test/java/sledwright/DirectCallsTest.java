package sledwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.InvokeDynamicInsnNode;

/** The step of the build that links lambdas and records before the program runs changes nothing of what they do. */
class DirectCallsTest {

    private static final String JAVA = Path.of(System.getProperty("java.home"), "bin", "java").toString();

    @TempDir
    private Path folder;

    @Test
    void whatIsLinkedBeforehandDoesTheSame() throws Exception {
        compile(Path.of("src/test/resources/direct-calls/Sample.java"));
        String before = run("-cp", folder.toString(), "Sample");
        assertThat(linkedLater()).hasSizeGreaterThan(30);

        step();

        assertThat(run("-cp", folder.toString(), "Sample")).isEqualTo(before).contains("deep4", "Own[value=null, count=3]");
        // A lambda that can be stored is left to Java.
        assertThat(linkedLater()).containsExactlyInAnyOrder("lambdas compare altMetafactory", "$deserializeLambda$ compare altMetafactory");
        Set<String> once = names();
        step();
        assertThat(names()).isEqualTo(once);
    }

    @Test
    void whatIsCompiledAnewLeavesNothingBehind() throws Exception {
        Path source = folder.resolve("Small.java");
        Files.writeString(source, "class Small { Runnable a = () -> { }; Runnable b = () -> a.run(); }");
        compile(source);
        step();
        assertThat(names()).containsExactly("Small$$1.class", "Small$$2.class", "Small.class");

        Files.writeString(source, "class Small { Runnable a = () -> { }; }");
        compile(source);
        step();
        assertThat(names()).containsExactly("Small$$1.class", "Small.class");
    }

    private void compile(Path source) {
        assertThat(ToolProvider.getSystemJavaCompiler().run(null, null, null, "-nowarn", "-XDstringConcat=inline", "--release", "17",
                "-d", folder.toString(), source.toString())).isZero();
    }

    private void step() throws Exception {
        String libraries = Stream.of(ClassReader.class, ClassNode.class)
                .map(one -> new File(one.getProtectionDomain().getCodeSource().getLocation().getPath()).getPath()).distinct()
                .reduce((one, other) -> one + File.pathSeparator + other).orElseThrow();
        assertThat(run("-cp", libraries, "src/main/build/DirectCalls.java", folder.toString())).isEmpty();
    }

    private String run(String... arguments) throws Exception {
        Process process = new ProcessBuilder(Stream.concat(Stream.of(JAVA, "-XX:TieredStopAtLevel=1"), Stream.of(arguments)).toList())
                .redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes());
        assertThat(process.waitFor()).as(said).isZero();
        return said;
    }

    private Set<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return new TreeSet<>(files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".class")).toList());
        }
    }

    private List<String> linkedLater() throws IOException {
        return names().stream().flatMap(name -> {
            ClassNode node = new ClassNode();
            try {
                new ClassReader(Files.readAllBytes(folder.resolve(name))).accept(node, 0);
            } catch (IOException gone) {
                throw new java.io.UncheckedIOException(gone);
            }
            return node.methods.stream().flatMap(method -> Stream.of(method.instructions.toArray())
                    .filter(InvokeDynamicInsnNode.class::isInstance).map(InvokeDynamicInsnNode.class::cast)
                    .map(call -> method.name + " " + call.name + " " + call.bsm.getName()));
        }).toList();
    }
}
