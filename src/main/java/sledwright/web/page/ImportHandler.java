package sledwright.web.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import sledwright.catalog.CatalogTable;
import sledwright.desk.CatalogDesk;
import sledwright.desk.ImportQuestion;
import sledwright.desk.view.ImportView;
import sledwright.input.Source;
import sledwright.report.intake.ImportPiece;
import sledwright.web.api.DeskReplies;
import sledwright.web.http.AccessLine;
import sledwright.web.http.AnsweringHandler;
import sledwright.web.http.RefusedException;
import sledwright.web.http.Responses;
import sledwright.web.queue.Reception;

/** A supplier's list that is uploaded: what it changes is looked at first, and written only as it was seen. */
public final class ImportHandler extends AnsweringHandler {

    static final String LOOK = "/page/import";
    static final String APPLY = "/page/import/apply";

    /** What is sent, as JSON. */
    private record Brought(CatalogTable table, Source list, Optional<Source> mapping, Optional<String> sheet, String seen, boolean rest) {

        ImportQuestion question(boolean apply) {
            return new ImportQuestion(table, list, mapping, sheet, apply, rest);
        }
    }

    private final Path folder;
    private final Reception reception;

    /** @param folder of the catalogue */
    public ImportHandler(Path folder, Reception reception) {
        this.folder = folder;
        this.reception = reception;
    }

    @Override
    protected boolean answers(Request request, Response response, Callback callback) {
        String path = Request.getPathInContext(request);
        if (!HttpMethod.POST.is(request.getMethod()) || !List.of(LOOK, APPLY).contains(path)) {
            return false;
        }
        AccessLine.name(request, path);
        reception.serve(request, response, callback, false, (body, visit) -> {
            Brought brought = brought(body);
            String piece = path.equals(APPLY) ? applied(brought) : looked(brought);
            visit.finish(() -> Responses.html(200, piece, request, response, callback));
        });
        return true;
    }

    private String looked(Brought brought) {
        ImportView view = DeskReplies.of(CatalogDesk.importList(folder, brought.question(false)));
        return ImportPiece.of(view, named(view));
    }

    /** What is written is what was looked at; two who write at once are kept apart as the command keeps them. */
    private synchronized String applied(Brought brought) {
        ImportView now = DeskReplies.of(CatalogDesk.importList(folder, brought.question(false)));
        if (!named(now).equals(brought.seen())) {
            throw RefusedException.of(409, "the list", "", "changes something else now than when it was looked at, for the catalogue has"
                    + " changed meanwhile; look again");
        }
        return ImportPiece.of(DeskReplies.of(CatalogDesk.importList(folder, brought.question(true))), "");
    }

    /** A name of these very changes. */
    private static String named(ImportView view) {
        try {
            byte[] all = (view.made().changes() + "\n" + view.made().refused()).getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(all));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static Brought brought(byte[] body) {
        try {
            JsonNode given = new ObjectMapper().readTree(body);
            String table = text("table", given);
            // A name is shown and its ending read; it opens nothing.
            String name = text("name", given).replaceAll("[\\\\/]", "_");
            String mapping = text("mapping", given);
            return new Brought(CatalogTable.named(table).orElseThrow(() -> RefusedException.of(400, "table", table, "must be one of "
                    + String.join(", ", CatalogTable.labels()))), Source.of(name, Base64.getDecoder().decode(text("list", given))),
                    mapping.isBlank() ? Optional.empty() : Optional.of(Source.of("the mapping", mapping.getBytes(StandardCharsets.UTF_8))),
                    Optional.of(text("sheet", given)).filter(sheet -> !sheet.isEmpty()), text("seen", given),
                    given.path("rest").asBoolean());
        } catch (IOException | IllegalArgumentException broken) {
            throw RefusedException.of(400, "the body", "", "must be JSON with table, name, list in base 64, mapping and sheet");
        }
    }

    private static String text(String key, JsonNode given) {
        return given == null ? "" : given.path(key).asText("");
    }
}
