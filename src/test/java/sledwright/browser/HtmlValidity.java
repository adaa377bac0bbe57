package sledwright.browser;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.InputStream;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import net.bytebuddy.ByteBuddy;

/** Whether a document is HTML as the standard has it, by the Nu Html Checker. */
public final class HtmlValidity {

    private static final String CHECKER = "nu.validator.client.EmbeddedValidator";
    private static final ClassLoader APART = new Apart();

    private HtmlValidity() {
    }

    /**
     * The checker apart from the program's HTTP server: it names an HTTP client of the same library in an older version. As it fetches nothing, empty types stand in for
     * that client.
     */
    private static final class Apart extends URLClassLoader {

        private static final String CLIENT = "org.eclipse.jetty.";

        Apart() {
            super(classPath(), ClassLoader.getPlatformClassLoader());
        }

        private static URL[] classPath() {
            List<URL> urls = new ArrayList<>();
            for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
                try {
                    urls.add(Path.of(entry).toUri().toURL());
                } catch (MalformedURLException impossible) {
                    throw new IllegalStateException(impossible);
                }
            }
            return urls.toArray(URL[]::new);
        }

        @Override
        protected Class<?> findClass(String name) throws ClassNotFoundException {
            if (name.startsWith(CLIENT)) {
                byte[] empty = new ByteBuddy().makeInterface().name(name).make().getBytes();
                return defineClass(name, empty, 0, empty.length);
            }
            return super.findClass(name);
        }
    }

    /** Errors and warnings, a line each. That elements are closed as in XML is accepted: pages are read as that, too. */
    public static List<String> faults(String html) {
        Thread thread = Thread.currentThread();
        ClassLoader usual = thread.getContextClassLoader();
        thread.setContextClassLoader(APART);
        try {
            Class<?> checker = APART.loadClass(CHECKER);
            Class<?> format = APART.loadClass(CHECKER + "$OutputFormat");
            Object one = checker.getConstructor().newInstance();
            checker.getMethod("setOutputFormat", format).invoke(one, format.getField("GNU").get(null));
            String found = (String) checker.getMethod("validate", InputStream.class)
                    .invoke(one, new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
            return found.lines().filter(line -> !line.isBlank() && !line.contains("Trailing slash on void elements")).toList();
        } catch (ReflectiveOperationException broken) {
            throw new IllegalStateException(broken);
        } finally {
            thread.setContextClassLoader(usual);
        }
    }
}
