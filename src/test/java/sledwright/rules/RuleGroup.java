package sledwright.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.Comparator;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import sledwright.rules.Examples.Example;

/** The tests of one group of rules: every method marked {@link ForRule} gives the examples of one rule, and all are run here. */
abstract class RuleGroup {

    @TestFactory
    Stream<DynamicNode> rules() {
        return examples().entrySet().stream().map(entry -> DynamicContainer.dynamicContainer(entry.getKey(),
                entry.getValue().all().stream().map(example -> test(entry.getKey(), example))));
    }

    /** Rule identifier -> its examples. */
    final SortedMap<String, Examples> examples() {
        SortedMap<String, Examples> byRule = new TreeMap<>();
        Arrays.stream(getClass().getDeclaredMethods()).filter(method -> method.isAnnotationPresent(ForRule.class))
                .sorted(Comparator.comparing(Method::getName)).forEach(method -> {
                    String rule = method.getAnnotation(ForRule.class).value();
                    if (byRule.put(rule, examplesOf(method)) != null) {
                        throw new IllegalStateException("two methods give the examples of " + rule);
                    }
                });
        return byRule;
    }

    private Examples examplesOf(Method method) {
        try {
            return (Examples) method.invoke(this);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the examples of %s do not stand".formatted(method.getName()), e);
        }
    }

    private static DynamicTest test(String rule, Example example) {
        return dynamicTest((example.offends() ? "offender: " : "innocent: ") + example.name(), () -> {
            assertThat(example.found(rule)).as("%s: %s", rule, example.name()).containsExactlyElementsOf(example.findings());
            assertThat(example.foundBeside(rule)).as("other rules broken by: %s", example.name()).isEqualTo(example.others());
        });
    }
}
