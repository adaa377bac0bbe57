import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.FieldInsnNode;
import org.objectweb.asm.tree.InvokeDynamicInsnNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;

/**
 * A step of the build: {@code java DirectCalls.java CLASSES} for a folder, {@code java DirectCalls.java JAR PACKAGE ...} for some packages of
 * a jar. What Java links when it first comes to it, lambdas, joined strings and what records say of themselves, becomes plain classes and
 * methods, which the class-data archive of the launcher can hold. Linking took more than a tenth of a short run. What is called, and what
 * comes of it, stays as it was. Classes that were done before are left as they are. Classes of Java 5, which no archive holds as checked, get
 * what lets it.
 */
final class DirectCalls implements Opcodes {

    private static final String MADE = "$$";
    private static final String LAMBDAS = "java/lang/invoke/LambdaMetafactory";
    private static final String RECORDS = "java/lang/runtime/ObjectMethods";
    private static final String STRINGS = "java/lang/invoke/StringConcatFactory";

    private final Path folder;
    private final ClassLoader loader;
    /** The time of everything in a jar, so that the same classes give the same jar; null in a folder. */
    private final FileTime stamp;
    private final Map<String, ClassNode> classes = new TreeMap<>();
    private final Map<String, ClassNode> made = new TreeMap<>();
    private final Set<String> changed = new HashSet<>();

    private DirectCalls(Path folder, ClassLoader loader, FileTime stamp) {
        this.folder = folder;
        this.loader = loader;
        this.stamp = stamp;
    }

    public static void main(String[] arguments) throws IOException {
        Path classes = Path.of(arguments[0]);
        try (URLClassLoader loader = new URLClassLoader(new URL[] {classes.toUri().toURL()}, ClassLoader.getPlatformClassLoader())) {
            if (Files.isDirectory(classes)) {
                new DirectCalls(classes, loader, null).change(List.of(""));
            } else {
                try (FileSystem jar = FileSystems.newFileSystem(classes)) {
                    Path root = jar.getPath("/");
                    FileTime stamp = Files.getLastModifiedTime(root.resolve("META-INF/MANIFEST.MF"));
                    new DirectCalls(root, loader, stamp).change(List.of(arguments).subList(1, arguments.length));
                }
            }
        }
    }

    private void change(List<String> packages) throws IOException {
        for (String some : packages) {
            read(folder.resolve(some));
        }
        List.copyOf(classes.values()).forEach(this::change);
        write();
    }

    private void read(Path some) throws IOException {
        try (Stream<Path> files = Files.walk(some)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".class")).sorted().toList()) {
                ClassNode read = new ClassNode();
                new ClassReader(Files.readAllBytes(file)).accept(read, 0);
                classes.put(read.name, read);
            }
        }
    }

    private void change(ClassNode host) {
        if (host.version < V1_6) {
            changed.add(host.name);
            return;
        }
        if (host.version < V11) {
            // Other classes may not call what is private in it.
            return;
        }
        for (MethodNode method : List.copyOf(host.methods)) {
            for (AbstractInsnNode instruction : method.instructions.toArray()) {
                if (!(instruction instanceof InvokeDynamicInsnNode call)) {
                    continue;
                }
                if (call.bsm.getOwner().equals(LAMBDAS) && call.bsm.getName().equals("metafactory")) {
                    method.instructions.set(call, direct(host, call));
                    changed.add(host.name);
                } else if (call.bsm.getOwner().equals(RECORDS)) {
                    RecordMethods.write(host, method, call);
                    changed.add(host.name);
                    break;
                } else if (call.bsm.getOwner().equals(STRINGS) && call.bsm.getName().equals("makeConcatWithConstants")) {
                    method.instructions.set(call, joined(host, call));
                    changed.add(host.name);
                }
            }
        }
    }

    /** A method that joins a string, of the class that wants it. */
    private static AbstractInsnNode joined(ClassNode host, InvokeDynamicInsnNode call) {
        String name = "joined" + MADE + host.methods.size();
        MethodNode method = new MethodNode(ACC_PRIVATE | ACC_STATIC | ACC_SYNTHETIC, name, call.desc, null, null);
        Strings.write(method, call);
        host.methods.add(method);
        return new MethodInsnNode(INVOKESTATIC, host.name, method.name, method.desc, (host.access & ACC_INTERFACE) != 0);
    }

    /** What stands in the place of a lambda: the only one of its class where it holds nothing, otherwise a new one. */
    private AbstractInsnNode direct(ClassNode host, InvokeDynamicInsnNode call) {
        String name = host.name + MADE;
        int number = 1;
        while (made.containsKey(name + number)) {
            number++;
        }
        LambdaClass lambda = new LambdaClass(name + number, call);
        ClassNode nest = classes.get(host.nestHostClass == null ? host.name : host.nestHostClass);
        made.put(name + number, lambda.node(host.version, nest.name));
        if (nest.nestMembers == null) {
            nest.nestMembers = new ArrayList<>();
        }
        nest.nestMembers.add(name + number);
        changed.add(nest.name);
        return lambda.use();
    }

    private void write() throws IOException {
        for (String name : changed) {
            store(classes.get(name));
        }
        for (ClassNode node : made.values()) {
            store(node);
        }
        // Of a class that was compiled anew, what an earlier run made goes away.
        Set<String> members = new HashSet<>();
        classes.values().stream().map(node -> node.nestMembers).filter(Objects::nonNull).forEach(members::addAll);
        for (String name : classes.keySet()) {
            if (name.matches(".*\\$\\$\\d+") && !members.contains(name)) {
                Files.delete(folder.resolve(name + ".class"));
            }
        }
    }

    private void store(ClassNode node) throws IOException {
        boolean old = node.version < V1_6;
        ClassWriter writer = new ClassWriter(old ? ClassWriter.COMPUTE_FRAMES : ClassWriter.COMPUTE_MAXS) {
            @Override
            protected ClassLoader getClassLoader() {
                return loader;
            }
        };
        node.version = old ? V1_6 : node.version;
        node.accept(writer);
        Path file = Files.write(folder.resolve(node.name + ".class"), writer.toByteArray());
        if (stamp != null) {
            Files.getFileAttributeView(file, BasicFileAttributeView.class).setTimes(stamp, stamp, stamp);
        }
    }

    /** A class with one lambda in it: what it has caught as fields, and the one method of its interface. */
    private static final class LambdaClass {

        private final String name;
        private final String method;
        private final Type made;
        private final Type[] caught;
        private final Type erased;
        private final Type actual;
        private final Handle target;

        LambdaClass(String name, InvokeDynamicInsnNode call) {
            this.name = name;
            method = call.name;
            made = Type.getReturnType(call.desc);
            caught = Type.getArgumentTypes(call.desc);
            erased = (Type) call.bsmArgs[0];
            target = (Handle) call.bsmArgs[1];
            actual = (Type) call.bsmArgs[2];
        }

        AbstractInsnNode use() {
            return caught.length == 0 ? new FieldInsnNode(GETSTATIC, name, "ONE", made.getDescriptor())
                    : new MethodInsnNode(INVOKESTATIC, name, "of", Type.getMethodDescriptor(made, caught), false);
        }

        ClassNode node(int version, String nest) {
            ClassNode node = new ClassNode();
            node.visit(version, ACC_FINAL | ACC_SUPER | ACC_SYNTHETIC, name, null, "java/lang/Object",
                    new String[] {made.getInternalName()});
            node.visitNestHost(nest);
            for (int i = 0; i < caught.length; i++) {
                node.visitField(ACC_PRIVATE | ACC_FINAL, "c" + i, caught[i].getDescriptor(), null, null);
            }
            constructor(node.visitMethod(ACC_PRIVATE, "<init>", Type.getMethodDescriptor(Type.VOID_TYPE, caught), null, null));
            if (caught.length == 0) {
                node.visitField(ACC_STATIC | ACC_FINAL, "ONE", made.getDescriptor(), null, null);
                MethodVisitor first = node.visitMethod(ACC_STATIC, "<clinit>", "()V", null, null);
                create(first);
                first.visitFieldInsn(PUTSTATIC, name, "ONE", made.getDescriptor());
                first.visitInsn(RETURN);
            } else {
                MethodVisitor of = node.visitMethod(ACC_STATIC, "of", Type.getMethodDescriptor(made, caught), null, null);
                create(of);
                of.visitInsn(ARETURN);
            }
            call(node.visitMethod(ACC_PUBLIC, method, erased.getDescriptor(), null, null));
            return node;
        }

        private void constructor(MethodVisitor code) {
            code.visitVarInsn(ALOAD, 0);
            code.visitMethodInsn(INVOKESPECIAL, "java/lang/Object", "<init>", "()V", false);
            int at = 1;
            for (int i = 0; i < caught.length; i++) {
                code.visitVarInsn(ALOAD, 0);
                code.visitVarInsn(caught[i].getOpcode(ILOAD), at);
                code.visitFieldInsn(PUTFIELD, name, "c" + i, caught[i].getDescriptor());
                at += caught[i].getSize();
            }
            code.visitInsn(RETURN);
        }

        private void create(MethodVisitor code) {
            code.visitTypeInsn(NEW, name);
            code.visitInsn(DUP);
            int at = 0;
            for (Type one : caught) {
                code.visitVarInsn(one.getOpcode(ILOAD), at);
                at += one.getSize();
            }
            code.visitMethodInsn(INVOKESPECIAL, name, "<init>", Type.getMethodDescriptor(Type.VOID_TYPE, caught), false);
        }

        private void call(MethodVisitor code) {
            boolean creates = target.getTag() == H_NEWINVOKESPECIAL;
            List<Type> wanted = new ArrayList<>();
            if (!creates && target.getTag() != H_INVOKESTATIC) {
                wanted.add(Type.getObjectType(target.getOwner()));
            }
            wanted.addAll(List.of(Type.getArgumentTypes(target.getDesc())));
            if (creates) {
                code.visitTypeInsn(NEW, target.getOwner());
                code.visitInsn(DUP);
            }
            for (int i = 0; i < caught.length; i++) {
                code.visitVarInsn(ALOAD, 0);
                code.visitFieldInsn(GETFIELD, name, "c" + i, caught[i].getDescriptor());
            }
            Type[] given = erased.getArgumentTypes();
            int at = 1;
            for (int i = 0; i < given.length; i++) {
                code.visitVarInsn(given[i].getOpcode(ILOAD), at);
                Conversions.convert(code, given[i], wanted.get(caught.length + i), actual.getArgumentTypes()[i]);
                at += given[i].getSize();
            }
            // A private method of the nest is called like any other.
            int opcode = switch (target.getTag()) {
                case H_INVOKESTATIC -> INVOKESTATIC;
                case H_NEWINVOKESPECIAL -> INVOKESPECIAL;
                default -> target.isInterface() ? INVOKEINTERFACE : INVOKEVIRTUAL;
            };
            code.visitMethodInsn(opcode, target.getOwner(), target.getName(), target.getDesc(), target.isInterface());
            Type back = creates ? Type.getObjectType(target.getOwner()) : Type.getReturnType(target.getDesc());
            Type returned = erased.getReturnType();
            if (returned.getSort() != Type.VOID) {
                Conversions.convert(code, back, returned, returned);
            }
            code.visitInsn(returned.getOpcode(IRETURN));
        }
    }

    /** One value as another type, as {@code LambdaMetafactory} has it. */
    private static final class Conversions {

        private static final Type OBJECT = Type.getObjectType("java/lang/Object");
        private static final List<Type> SIMPLE = List.of(Type.BOOLEAN_TYPE, Type.CHAR_TYPE, Type.BYTE_TYPE, Type.SHORT_TYPE, Type.INT_TYPE,
                Type.LONG_TYPE, Type.FLOAT_TYPE, Type.DOUBLE_TYPE);
        private static final List<String> BOXES = List.of("Boolean", "Character", "Byte", "Short", "Integer", "Long", "Float", "Double");

        static boolean simple(Type type) {
            return SIMPLE.contains(type);
        }

        static String box(Type simple) {
            return "java/lang/" + BOXES.get(SIMPLE.indexOf(simple));
        }

        private static Type unboxed(Type type) {
            return SIMPLE.stream().filter(simple -> box(simple).equals(type.getInternalName())).findFirst().orElse(null);
        }

        static void convert(MethodVisitor code, Type given, Type wanted, Type actual) {
            if (simple(given)) {
                if (simple(wanted)) {
                    widen(code, given, wanted);
                } else {
                    Type inside = unboxed(wanted) == null ? given : unboxed(wanted);
                    widen(code, given, inside);
                    code.visitMethodInsn(INVOKESTATIC, box(inside), "valueOf", "(" + inside + ")L" + box(inside) + ";", false);
                }
                return;
            }
            Type source = simple(actual) ? given : actual;
            cast(code, given, source);
            if (!simple(wanted)) {
                cast(code, source, wanted);
                return;
            }
            Type inside = unboxed(source);
            if (inside != null) {
                unbox(code, box(inside), inside);
                widen(code, inside, wanted);
            } else {
                boolean number = wanted != Type.BOOLEAN_TYPE && wanted != Type.CHAR_TYPE;
                String box = number ? "java/lang/Number" : box(wanted);
                cast(code, source, Type.getObjectType(box));
                unbox(code, box, wanted);
            }
        }

        private static void unbox(MethodVisitor code, String box, Type simple) {
            code.visitMethodInsn(INVOKEVIRTUAL, box, simple.getClassName() + "Value", "()" + simple, false);
        }

        private static void cast(MethodVisitor code, Type from, Type to) {
            if (!from.equals(to) && !to.equals(OBJECT)) {
                code.visitTypeInsn(CHECKCAST, to.getInternalName());
            }
        }

        private static void widen(MethodVisitor code, Type from, Type to) {
            int opcode = switch (to.getSort()) {
                case Type.LONG -> from == Type.LONG_TYPE ? NOP : I2L;
                case Type.FLOAT -> from == Type.FLOAT_TYPE ? NOP : from == Type.LONG_TYPE ? L2F : I2F;
                case Type.DOUBLE -> from == Type.DOUBLE_TYPE ? NOP : from == Type.LONG_TYPE ? L2D : from == Type.FLOAT_TYPE ? F2D : I2D;
                default -> NOP;
            };
            if (opcode != NOP) {
                code.visitInsn(opcode);
            }
        }
    }

    /** What a record says of itself, as {@code ObjectMethods} has it, hash codes included. */
    private static final class RecordMethods {

        static void write(ClassNode host, MethodNode method, InvokeDynamicInsnNode call) {
            List<Handle> fields = new ArrayList<>();
            for (int i = 2; i < call.bsmArgs.length; i++) {
                fields.add((Handle) call.bsmArgs[i]);
            }
            method.instructions.clear();
            method.localVariables = null;
            switch (call.name) {
                case "hashCode" -> hashCode(method, fields);
                case "equals" -> equals(host.name, method, fields);
                case "toString" -> toString((Type) call.bsmArgs[0], (String) call.bsmArgs[1], method, fields);
                default -> throw new IllegalStateException(host.name + "." + call.name);
            }
        }

        private static Type load(MethodVisitor code, int variable, Handle field) {
            code.visitVarInsn(ALOAD, variable);
            code.visitFieldInsn(GETFIELD, field.getOwner(), field.getName(), field.getDesc());
            return Type.getType(field.getDesc());
        }

        private static void hashCode(MethodVisitor code, List<Handle> fields) {
            code.visitInsn(ICONST_0);
            for (Handle field : fields) {
                code.visitIntInsn(BIPUSH, 31);
                code.visitInsn(IMUL);
                Type type = load(code, 0, field);
                boolean simple = Conversions.simple(type);
                code.visitMethodInsn(INVOKESTATIC, simple ? Conversions.box(type) : "java/util/Objects", "hashCode",
                        "(" + (simple ? type : Conversions.OBJECT) + ")I", false);
                code.visitInsn(IADD);
            }
            code.visitInsn(IRETURN);
        }

        private static void equals(String host, MethodVisitor code, List<Handle> fields) {
            Label other = new Label();
            code.visitVarInsn(ALOAD, 0);
            code.visitVarInsn(ALOAD, 1);
            code.visitJumpInsn(IF_ACMPNE, other);
            code.visitInsn(ICONST_1);
            code.visitInsn(IRETURN);
            code.visitLabel(other);
            code.visitFrame(F_SAME, 0, null, 0, null);
            Label alike = new Label();
            code.visitVarInsn(ALOAD, 1);
            code.visitTypeInsn(INSTANCEOF, host);
            code.visitJumpInsn(IFNE, alike);
            code.visitInsn(ICONST_0);
            code.visitInsn(IRETURN);
            code.visitLabel(alike);
            code.visitFrame(F_SAME, 0, null, 0, null);
            code.visitVarInsn(ALOAD, 1);
            code.visitTypeInsn(CHECKCAST, host);
            code.visitVarInsn(ASTORE, 2);
            Label unequal = new Label();
            for (Handle field : fields) {
                load(code, 0, field);
                compare(code, load(code, 2, field), unequal);
            }
            code.visitInsn(ICONST_1);
            code.visitInsn(IRETURN);
            if (!fields.isEmpty()) {
                code.visitLabel(unequal);
                code.visitFrame(F_APPEND, 1, new Object[] {host}, 0, null);
                code.visitInsn(ICONST_0);
                code.visitInsn(IRETURN);
            }
        }

        private static void compare(MethodVisitor code, Type type, Label unequal) {
            switch (type.getSort()) {
                case Type.LONG -> {
                    code.visitInsn(LCMP);
                    code.visitJumpInsn(IFNE, unequal);
                }
                case Type.FLOAT, Type.DOUBLE -> {
                    code.visitMethodInsn(INVOKESTATIC, Conversions.box(type), "compare", "(" + type + type + ")I", false);
                    code.visitJumpInsn(IFNE, unequal);
                }
                case Type.OBJECT, Type.ARRAY -> {
                    code.visitMethodInsn(INVOKESTATIC, "java/util/Objects", "equals", "(Ljava/lang/Object;Ljava/lang/Object;)Z", false);
                    code.visitJumpInsn(IFEQ, unequal);
                }
                default -> code.visitJumpInsn(IF_ICMPNE, unequal);
            }
        }

        private static void toString(Type self, String names, MethodVisitor code, List<Handle> fields) {
            // As the class itself would say its simple name, which no class file states.
            Strings.begin(code);
            code.visitLdcInsn(self);
            code.visitMethodInsn(INVOKEVIRTUAL, "java/lang/Class", "getSimpleName", "()Ljava/lang/String;", false);
            Strings.append(code, Strings.STRING);
            String[] name = names.split(";");
            for (int i = 0; i < fields.size(); i++) {
                Strings.append(code, (i == 0 ? "[" : ", ") + name[i] + "=");
                Strings.append(code, load(code, 0, fields.get(i)));
            }
            Strings.append(code, fields.isEmpty() ? "[]" : "]");
            Strings.end(code);
        }
    }

    /** A string of several, as {@code StringConcatFactory} has it. */
    private static final class Strings {

        private static final Type STRING = Type.getObjectType("java/lang/String");
        private static final char GIVEN = '\1';
        private static final char CONSTANT = '\2';

        static void write(MethodVisitor code, InvokeDynamicInsnNode call) {
            Type[] given = Type.getArgumentTypes(call.desc);
            begin(code);
            int at = 0;
            int argument = 0;
            int constant = 1;
            StringBuilder text = new StringBuilder();
            for (char letter : ((String) call.bsmArgs[0]).toCharArray()) {
                if (letter == CONSTANT) {
                    text.append(call.bsmArgs[constant++]);
                } else if (letter == GIVEN) {
                    append(code, text.toString());
                    text.setLength(0);
                    code.visitVarInsn(given[argument].getOpcode(ILOAD), at);
                    append(code, given[argument]);
                    at += given[argument++].getSize();
                } else {
                    text.append(letter);
                }
            }
            append(code, text.toString());
            end(code);
        }

        static void begin(MethodVisitor code) {
            code.visitTypeInsn(NEW, "java/lang/StringBuilder");
            code.visitInsn(DUP);
            code.visitMethodInsn(INVOKESPECIAL, "java/lang/StringBuilder", "<init>", "()V", false);
        }

        static void append(MethodVisitor code, String text) {
            if (!text.isEmpty()) {
                code.visitLdcInsn(text);
                append(code, STRING);
            }
        }

        static void append(MethodVisitor code, Type type) {
            String said = switch (type.getSort()) {
                case Type.BYTE, Type.SHORT -> "I";
                case Type.OBJECT, Type.ARRAY -> type.equals(STRING) ? "Ljava/lang/String;" : "Ljava/lang/Object;";
                default -> type.getDescriptor();
            };
            code.visitMethodInsn(INVOKEVIRTUAL, "java/lang/StringBuilder", "append", "(" + said + ")Ljava/lang/StringBuilder;", false);
        }

        static void end(MethodVisitor code) {
            code.visitMethodInsn(INVOKEVIRTUAL, "java/lang/StringBuilder", "toString", "()Ljava/lang/String;", false);
            code.visitInsn(ARETURN);
        }
    }
}
