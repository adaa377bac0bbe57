package sledwright.browser;

import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/** Opens the browser when the first test wants it and closes it after the last test of the run. */
final class BrowserExtension implements ExecutionCondition, ParameterResolver {

    private static final Namespace OURS = Namespace.create(BrowserExtension.class);

    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
        if (Browser.isInstalled()) {
            return ConditionEvaluationResult.enabled("there is a browser");
        }
        String message = "%s and %s are missing. Maybe install Debian's chromium and chromium-driver.".formatted(Browser.PROGRAM, Browser.DRIVER);
        if ("required".equals(System.getenv("SLEDWRIGHT_BROWSER"))) {
            throw new IllegalStateException(message);
        }
        return ConditionEvaluationResult.disabled(message);
    }

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Browser.class;
    }

    @Override
    public Browser resolveParameter(ParameterContext parameter, ExtensionContext context) {
        return context.getRoot().getStore(OURS).getOrComputeIfAbsent(Browser.class, none -> Browser.start(), Browser.class);
    }
}
