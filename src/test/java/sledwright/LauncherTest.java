package sledwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes.Name;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.samples.Folders;

/** The launcher finds its jar from anywhere, and a class-data archive that doesn't fit goes unnoticed. */
@DisabledOnOs(OS.WINDOWS)
class LauncherTest {

  private record Run(int exit, String output, String errors) {}

  @TempDir Path folder;
  private Path launcher;

  @BeforeEach
  void installLauncherInFolderWithBlank() throws IOException {
    Path home = Files.createDirectories(folder.resolve("two words"));
    launcher = Files.copy(Path.of("src/main/launcher/sledwright"), home.resolve("sledwright"));
    assertThat(launcher.toFile().setExecutable(true)).isTrue();
    writeJarThatPointsToTheClassPath(home.resolve("sledwright.jar"));
  }

  @Test
  void startsFromAnotherFolder() throws Exception {
    assertStarts(run(folder, launcher.toString(), "--version"));
  }

  @Test
  void startsThroughChainOfSymbolicLinks() throws Exception {
    Path first = Files.createSymbolicLink(folder.resolve("first"), Path.of("two words", "sledwright"));
    Path other = Files.createDirectories(folder.resolve("other"));
    Path second = Files.createSymbolicLink(other.resolve("second"), Path.of("..", first.getFileName().toString()));

    assertStarts(run(Path.of("/"), second.toString(), "--version"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"sledwright.jsa", "sledwright-text.jsa"})
  void archiveThatIsNoneGoesUnnoticed(String archive) throws Exception {
    Files.writeString(launcher.resolveSibling(archive), "not an archive");

    assertStarts(run(folder, launcher.toString(), "--version"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"sledwright.jsa", "sledwright-text.jsa"})
  void archiveOfAnotherJarGoesUnnoticed(String archive) throws Exception {
    Path dumped = launcher.resolveSibling(archive);
    Run dump =
        run(
            launcher.getParent(),
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:ArchiveClassesAtExit=" + dumped,
            "-cp",
            launcher.resolveSibling("sledwright.jar").toString(),
            "sledwright.cli.Main",
            "--version");
    assertThat(dumped).as(dump.errors()).isNotEmptyFile();
    Files.setLastModifiedTime(launcher.resolveSibling("sledwright.jar"), FileTime.fromMillis(0));

    assertStarts(run(folder, launcher.toString(), "--version"));
  }

  /** Java ends where there are fewer threads than compilers. */
  @ParameterizedTest
  @ValueSource(strings = {"-XX:TieredStopAtLevel=4", "-XX:-TieredCompilation", "-XX:CICompilerCount=3 -XX:TieredStopAtLevel=4", "-Xint", "-Xmx900m"})
  void whoeverStartsItMayAskForOtherCompilers(String options) throws Exception {
    assertStarts(run(folder, Map.of("SLEDWRIGHT_JAVA_OPTIONS", options), launcher.toString(), "--version"));
  }

  @Test
  void argumentsKeepTheirBlanksAndExitCodesPassThrough() throws Exception {
    Run run = run(folder, launcher.toString(), "no such command");

    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.output()).isEmpty();
    assertThat(run.errors()).contains("'no such command'");
  }

  @Test
  void missingJavaIsSaidPlainly() throws Exception {
    Path nothing = Files.createDirectories(folder.resolve("nothing"));
    ProcessBuilder builder = new ProcessBuilder(launcher.toString(), "--version").directory(folder.toFile());
    builder.environment().remove("JAVA_HOME");
    builder.environment().put("PATH", nothing.toString());

    Run run = finish(builder);

    assertThat(run.exit()).isEqualTo(1);
    assertThat(run.errors()).contains("no Java found").contains("Maybe install Java 17");
  }

  /** As cron, services and containers start it, and with a locale that is not installed. */
  @ParameterizedTest
  @CsvSource({"'', '', ''", "C, '', ''", "'', C, ''", "'', '', POSIX", "xx_YY.UTF-8, '', ''", "'', '', C.UTF-8", "C, C.UTF-8, C.UTF-8"})
  void lettersSurviveAnyLocale(String all, String characters, String language) throws Exception {
    Path home = Files.move(launcher.getParent(), folder.resolve("Bücher für Ærø"));
    Path asked = Files.createDirectories(folder.resolve("Größe"));
    Path request =
        Files.writeString(asked.resolve("Anfrage-日本.yaml"), "kind: quote\nname: Löschteich\ncatalog: ../Größe/shöp\n");
    Folders.copy(Folders.SHOP, asked.resolve("shöp"));

    Run run =
        run(
            asked,
            locale(all, characters, language),
            home.resolve("sledwright").toString(),
            "quote",
            request.getFileName().toString(),
            "--set",
            "customer=Müller & Ørsted",
            "--format",
            "html",
            "--output",
            "Angebot für Müller.html");

    assertThat(run.errors()).isEmpty();
    assertThat(run.exit()).isZero();
    assertThat(Files.readString(asked.resolve("Angebot für Müller.html"))).contains("Müller &amp; Ørsted", "Löschteich");
    Run missing = run(asked, locale(all, characters, language), home.resolve("sledwright").toString(), "quote", "hängt.yaml");
    assertThat(missing.errors()).startsWith("hängt.yaml: there is no such file");
  }

  @Test
  void withoutTheLauncherLostLettersAreSaid() throws Exception {
    Run run =
        run(
            folder,
            locale("C", "", ""),
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            launcher.resolveSibling("sledwright.jar").toString(),
            "sledwright.cli.Main",
            "quote",
            "hängt.yaml");

    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.errors())
        .startsWith("sledwright: \"h")
        .contains("has letters that are lost, for Java reads arguments as ")
        .contains("Maybe start the program by its launcher, or set LC_ALL=C.UTF-8.");
  }

  /** Whoever reads the results may stop reading, as a pager does. */
  @Test
  void aReaderThatStopsIsNoFailure() throws Exception {
    Run run =
        run(
            Path.of("").toAbsolutePath(),
            Map.of("LAUNCHER", launcher.toString()),
            "sh",
            "-c",
            "{ \"$LAUNCHER\" catalog export catalogs/heronfold-yard --as offers; echo $? >&2; } | { read line; echo \"$line\"; exec <&-; sleep 0; }");

    assertThat(run.output()).startsWith("sku,lot,supplier");
    assertThat(run.errors()).isEqualTo("141\n");
  }

  /** The book's database is native code, of which newer Javas warn. */
  @ParameterizedTest
  @MethodSource("javas")
  void noJavaWarnsOfTheBook(Path home) throws Exception {
    Run run =
        run(
            folder,
            Map.of("JAVA_HOME", home.toString()),
            launcher.toString(),
            "book",
            "list",
            "--book",
            folder.resolve("book.db").toString());

    assertThat(run.errors()).isEmpty();
    assertThat(run.output()).isEqualTo("No quote of the book is like that.\n");
  }

  /** The one that runs this, and others where Debian puts them. */
  private static List<Path> javas() throws IOException {
    Path own = Path.of(System.getProperty("java.home")).toRealPath();
    Path installed = Path.of("/usr/lib/jvm");
    List<Path> javas = new ArrayList<>(List.of(own));
    if (Files.isDirectory(installed)) {
      try (Stream<Path> found = Files.list(installed)) {
        for (Path home : found.filter(java -> Files.isReadable(java.resolve("release"))).toList()) {
          String version = Files.readString(home.resolve("release")).replaceAll("(?s).*JAVA_VERSION=\"(\\d+).*", "$1");
          if (version.matches("\\d+") && Integer.parseInt(version) >= 17 && Files.isExecutable(home.resolve("bin/java"))) {
            javas.add(home.toRealPath());
          }
        }
      }
    }
    return javas.stream().distinct().toList();
  }

  private static Map<String, String> locale(String all, String characters, String language) {
    return Map.of("LC_ALL", all, "LC_CTYPE", characters, "LANG", language);
  }

  private static void assertStarts(Run run) {
    assertThat(run.errors()).isEmpty();
    assertThat(run.output()).startsWith("sledwright ").hasLineCount(1);
    assertThat(run.exit()).isZero();
  }

  private static void writeJarThatPointsToTheClassPath(Path jar) throws IOException {
    Manifest manifest = new Manifest();
    manifest.getMainAttributes().put(Name.MANIFEST_VERSION, "1.0");
    manifest
        .getMainAttributes()
        .put(
            Name.CLASS_PATH,
            Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(entry -> Path.of(entry).toUri().toString())
                .collect(Collectors.joining(" ")));
    try (OutputStream out = Files.newOutputStream(jar);
        JarOutputStream entries = new JarOutputStream(out, manifest)) {
      entries.finish();
    }
  }

  private static Run run(Path directory, String... command) throws IOException, InterruptedException {
    return run(directory, Map.of(), command);
  }

  /**
   * @param variables what the process finds in its environment; an empty one is not there
   */
  private static Run run(Path directory, Map<String, String> variables, String... command)
      throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).directory(directory.toFile());
    builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
    builder.environment().remove("SLEDWRIGHT_JAVA_OPTIONS");
    builder.environment().putAll(variables);
    builder.environment().values().removeIf(String::isEmpty);
    return finish(builder);
  }

  private static Run finish(ProcessBuilder builder) throws IOException, InterruptedException {
    Path output = Files.createTempFile("output", null);
    Path errors = Files.createTempFile("errors", null);
    try {
      builder.environment().remove("JAVA_TOOL_OPTIONS");
      Process process = builder.redirectOutput(output.toFile()).redirectError(errors.toFile()).start();
      assertThat(process.waitFor(1, TimeUnit.MINUTES)).as("ended within a minute").isTrue();
      return new Run(process.exitValue(), Files.readString(output), Files.readString(errors));
    } finally {
      Files.delete(output);
      Files.delete(errors);
    }
  }
}
