package sledwright.book.store;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;

/** A test that needs PostgreSQL. It is skipped where none is installed, unless {@code SLEDWRIGHT_POSTGRES=required}. */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(WithSharedServer.Installed.class)
public @interface WithSharedServer {

    class Installed implements ExecutionCondition {

        @Override
        public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
            if (SharedServer.isInstalled() || "required".equals(System.getenv("SLEDWRIGHT_POSTGRES"))) {
                return ConditionEvaluationResult.enabled("PostgreSQL is installed, or must be");
            }
            return ConditionEvaluationResult.disabled("PostgreSQL is not installed: no initdb on the path or under /usr/lib/postgresql");
        }
    }
}
