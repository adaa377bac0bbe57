package sledwright.report.page;

import freemarker.core.HTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.DefaultObjectWrapper;
import freemarker.template.SimpleScalar;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import java.util.Optional;
import sledwright.report.text.Unbroken;

/**
 * Hands values to templates: texts harmless and figures beside their units, an empty {@link Optional} as a missing value,
 * {@link Markup} as it is.
 */
final class PageWrapper extends DefaultObjectWrapper {

    PageWrapper() {
        super(Configuration.VERSION_2_3_34);
        writeProtect();
    }

    @Override
    public TemplateModel wrap(Object value) throws TemplateModelException {
        if (value instanceof String text) {
            return new SimpleScalar(Unbroken.text(Harmless.text(text)));
        }
        if (value instanceof Optional<?> optional) {
            return wrap(optional.orElse(null));
        }
        if (value instanceof Markup markup) {
            return HTMLOutputFormat.INSTANCE.fromMarkup(markup.html());
        }
        return super.wrap(value);
    }
}
