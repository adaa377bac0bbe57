package sledwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.InvokeDynamicInsnNode;
import org.objectweb.asm.tree.MethodNode;

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

    @Test
    void packagesOfAJarAreLinkedWithTheStringsThatTheyJoin() throws Exception {
        Path sources = Files.createDirectory(folder.resolve("sources"));
        Path source = Files.writeString(sources.resolve("Joining.java"), """
                package asked;
                public class Joining {
                    interface Named { default String name(Object it) { return "<" + it + ">"; } }
                    public static void main(String[] words) throws Exception {
                        System.out.println(Class.forName("asked.old.Old").getMethod("least", int.class, int.class).invoke(null, 7, 5));
                        char[] letters = {'a'};
                        Object hidden = letters;
                        byte b = -1; short s = 2; int i = 3; long l = 4L; float f = 5.5f; double d = 6.25; char c = 'x'; boolean yes = true;
                        String none = null;
                        System.out.println("" + b + s + ' ' + i + "/" + l + f + d + c + yes + none + words.length);
                        System.out.println((hidden + "").startsWith("[C@") + new Named() { }.name(1L));
                        Runnable run = () -> System.out.println(words + "".substring(words.length));
                        System.out.println(run != null);
                    }
                }
                """);
        Path other = Files.writeString(sources.resolve("Other.java"), "package other; class Other { Runnable a = () -> { }; }");
        Path classes = Files.createDirectory(folder.resolve("classes"));
        assertThat(ToolProvider.getSystemJavaCompiler().run(null, null, null, "-XDstringConcat=indyWithConstants", "--release", "17",
                "-d", classes.toString(), source.toString(), other.toString())).isZero();
        Files.write(Files.createDirectories(classes.resolve("asked/old")).resolve("Old.class"), ofJava5());
        Path jar = folder.resolve("some.jar");
        assertThat(java.util.spi.ToolProvider.findFirst("jar").orElseThrow().run(System.out, System.err, "cf", jar.toString(), "-C", classes.toString(), "."))
                .isZero();
        String before = run("-cp", jar.toString(), "asked.Joining");

        step(jar, "asked");

        assertThat(run("-cp", jar.toString(), "asked.Joining")).isEqualTo(before).startsWith("5\n-12 3/45.56.25xtruenull0\n");
        try (FileSystem inside = FileSystems.newFileSystem(jar)) {
            assertThat(Files.getLastModifiedTime(inside.getPath("/asked/Joining$$1.class")))
                    .isEqualTo(Files.getLastModifiedTime(inside.getPath("/META-INF/MANIFEST.MF")));
            assertThat(linkedLater(inside.getPath("/asked"))).isEmpty();
            assertThat(linkedLater(inside.getPath("/other"))).hasSize(1);
            assertThat(node(inside.getPath("/asked/old/Old.class")).version).isEqualTo(Opcodes.V1_6);
        }
    }

    /** Classes that old have no maps of the stack, which Java checks them by. */
    private static byte[] ofJava5() {
        ClassWriter old = new ClassWriter(0);
        old.visit(Opcodes.V1_5, Opcodes.ACC_PUBLIC | Opcodes.ACC_SUPER, "asked/old/Old", null, "java/lang/Object", null);
        MethodVisitor method = old.visitMethod(Opcodes.ACC_PUBLIC | Opcodes.ACC_STATIC, "least", "(II)I", null, null);
        Label other = new Label();
        method.visitVarInsn(Opcodes.ILOAD, 0);
        method.visitVarInsn(Opcodes.ILOAD, 1);
        method.visitJumpInsn(Opcodes.IF_ICMPGE, other);
        method.visitVarInsn(Opcodes.ILOAD, 0);
        method.visitInsn(Opcodes.IRETURN);
        method.visitLabel(other);
        method.visitVarInsn(Opcodes.ILOAD, 1);
        method.visitInsn(Opcodes.IRETURN);
        method.visitMaxs(2, 2);
        return old.toByteArray();
    }

    private void compile(Path source) {
        assertThat(ToolProvider.getSystemJavaCompiler().run(null, null, null, "-nowarn", "-XDstringConcat=inline", "--release", "17",
                "-d", folder.toString(), source.toString())).isZero();
    }

    private void step() throws Exception {
        step(folder);
    }

    private void step(Path classes, String... packages) throws Exception {
        String libraries = Stream.of(ClassReader.class, ClassNode.class)
                .map(one -> new File(one.getProtectionDomain().getCodeSource().getLocation().getPath()).getPath()).distinct()
                .reduce((one, other) -> one + File.pathSeparator + other).orElseThrow();
        assertThat(run(Stream.concat(Stream.of("-cp", libraries, "src/main/build/DirectCalls.java", classes.toString()), Stream.of(packages))
                .toArray(String[]::new))).isEmpty();
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
        return linkedLater(folder);
    }

    private static List<String> linkedLater(Path some) throws IOException {
        List<String> later = new ArrayList<>();
        try (Stream<Path> files = Files.list(some)) {
            for (Path file : files.filter(one -> one.toString().endsWith(".class")).toList()) {
                for (MethodNode method : node(file).methods) {
                    Stream.of(method.instructions.toArray()).filter(InvokeDynamicInsnNode.class::isInstance).map(InvokeDynamicInsnNode.class::cast)
                            .forEach(call -> later.add(method.name + " " + call.name + " " + call.bsm.getName()));
                }
            }
        }
        return later;
    }

    private static ClassNode node(Path file) throws IOException {
        ClassNode node = new ClassNode();
        new ClassReader(Files.readAllBytes(file)).accept(node, 0);
        return node;
    }
}
