package sledwright;

import static com.tngtech.archunit.base.DescribedPredicate.alwaysTrue;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import sledwright.rules.Rulebook;

/** Holds who may import whom: data flows one way, from facts to text. */
@AnalyzeClasses(packages = "sledwright", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {

  private static final String ROOT = "sledwright";

  /** Every package with those it may import, from the ground up. */
  private static final Map<String, List<String>> MAY_IMPORT = mayImport();

  @ArchTest
  static final ArchRule PACKAGES_IMPORT_ONLY_WHAT_THE_TABLE_ALLOWS = classes().should(importOnlyWhatTheTableAllows());

  @ArchTest
  static final ArchRule PACKAGES_HAVE_NO_CYCLES = slices().matching(ROOT + ".(*)..").should().beFreeOfCycles();

  /** Rooms within a package, too: each package is a slice of its own. Only the rulebook lists the rules that are made of what lies beside it. */
  @ArchTest
  static final ArchRule ROOMS_HAVE_NO_CYCLES =
      slices().matching(ROOT + ".(**)").should().beFreeOfCycles().ignoreDependency(type(Rulebook.class), alwaysTrue());

  /** A constructor of more is hard to call right: what belongs together is a record of its own. */
  @ArchTest
  static void constructorsTakeAtMostSevenParameters(JavaClasses all) {
    Set<String> wide = new TreeSet<>();
    for (JavaClass one : all) {
      // What a lambda has caught is nobody's argument.
      if (one.getModifiers().contains(JavaModifier.SYNTHETIC)) {
        continue;
      }
      // An enum's constructor takes its name and place, too.
      int most = one.isEnum() ? 9 : 7;
      if (one.getConstructors().stream().anyMatch(made -> made.getRawParameterTypes().size() > most)) {
        wide.add(one.getName());
      }
    }
    assertThat(wide).as("classes with constructors of more than seven parameters").isEmpty();
  }

  @ArchTest
  static final ArchRule FACTS_NEED_NO_LIBRARY =
      classes()
          .that()
          .resideInAPackage(ROOT + ".domain..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("java..", ROOT + ".domain..")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule ONLY_THE_COMMAND_LINE_USES_STANDARD_STREAMS =
      noClasses()
          .that()
          .resideOutsideOfPackage(ROOT + ".cli..")
          .should()
          .accessField(System.class, "in")
          .orShould()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .callMethod(Throwable.class, "printStackTrace")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule ONLY_THE_COMMAND_LINE_ENDS_THE_PROGRAM =
      noClasses()
          .that()
          .resideOutsideOfPackage(ROOT + ".cli..")
          .should()
          .callMethod(System.class, "exit", int.class)
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule ONLY_THE_COMMAND_LINE_PARSES_ARGUMENTS =
      noClasses()
          .that()
          .resideOutsideOfPackage(ROOT + ".cli..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("picocli..")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule PLANNING_ENTITIES_STAY_IN_THE_PLANNER =
      noClasses()
          .that()
          .resideOutsideOfPackage(ROOT + ".planner..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.optaplanner..")
          .allowEmptyShould(true);

  private static Map<String, List<String>> mayImport() {
    Map<String, List<String>> table = new LinkedHashMap<>();
    table.put("domain", List.of());
    table.put("input", List.of());
    table.put("words", List.of());
    table.put("catalog", List.of("domain", "input"));
    table.put("request", List.of("domain", "input", "catalog"));
    table.put("metrics", List.of("domain"));
    table.put("rules", List.of("domain", "words", "metrics"));
    table.put("generator", List.of("domain", "words", "metrics", "rules"));
    table.put("planner", upTo(table, "generator"));
    table.put("compare", upTo(table, "planner"));
    table.put("explain", upTo(table, "planner"));
    table.put("label", List.of("domain", "input"));
    table.put("mail", List.of("domain"));
    table.put("restock", upTo(table, "explain"));
    table.put("desk", upTo(table, "restock"));
    table.put("book", upTo(table, "desk"));
    table.put("report", upTo(table, "book"));
    // A face asks at the desk and has the answer rendered; it wires no search, no judging and no explanation itself.
    table.put("web", List.of("domain", "input", "words", "catalog", "rules", "mail", "desk", "book", "report"));
    table.put("cli", List.of("domain", "input", "words", "catalog", "rules", "desk", "book", "report", "web"));
    return table;
  }

  private static List<String> upTo(Map<String, List<String>> table, String last) {
    List<String> packages = new ArrayList<>(table.keySet());
    return List.copyOf(packages.subList(0, packages.indexOf(last) + 1));
  }

  private static ArchCondition<JavaClass> importOnlyWhatTheTableAllows() {
    return new ArchCondition<>("import only what the table of packages allows") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        String from = packageOf(type);
        if (!MAY_IMPORT.containsKey(from)) {
          events.add(
              SimpleConditionEvent.violated(
                  type, "%s is in none of the packages %s".formatted(type.getName(), MAY_IMPORT.keySet())));
          return;
        }
        for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
          JavaClass target = dependency.getTargetClass().getBaseComponentType();
          if (target.getPackageName().startsWith(ROOT)
              && !packageOf(target).equals(from)
              && !MAY_IMPORT.get(from).contains(packageOf(target))) {
            events.add(
                SimpleConditionEvent.violated(
                    dependency,
                    "%s may import only %s: %s".formatted(from, MAY_IMPORT.get(from), dependency.getDescription())));
          }
        }
      }
    };
  }

  /** The part of the package name after the root: {@code sledwright.planner.model} is in {@code planner}. */
  private static String packageOf(JavaClass type) {
    String[] parts = type.getPackageName().split("\\.");
    return parts.length > 1 ? parts[1] : "";
  }
}
