package sledwright.restock;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import sledwright.domain.Card;
import sledwright.domain.CoolingKit;
import sledwright.domain.Drive;
import sledwright.domain.Enclosure;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Supply;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.ModuleTypeTaken;
import sledwright.rules.processor.SocketMatch;

/** Which classes could take a part at all: those that can be answered on some platform that the part fits. */
final class Relevance {

    private final Shelves shelves;
    private final List<List<Platform>> platforms = new ArrayList<>();

    Relevance(Shelves shelves, Choices choices, Search search, Deadline deadline) {
        this.shelves = shelves;
        for (int k = 0; k < shelves.request().classes().size(); k++) {
            Request asked = shelves.request().classes().get(k).request().withAlternatives(1, Shortlist.PLAIN.step());
            boolean possible = choices.impossible(k).isEmpty() && choices.revenue(k).isPresent();
            platforms.add(shelves.catalog().platforms().stream()
                    .filter(board -> possible && (asked.platforms().isEmpty() || asked.platforms().contains(board.sku())))
                    .filter(board -> search.run(asked.withPlatforms(Set.of(board.sku())), deadline).status() != Status.IMPOSSIBLE)
                    .toList());
        }
    }

    List<Integer> classesOf(String sku) {
        Part part = shelves.catalog().part(sku).orElseThrow();
        return IntStream.range(0, platforms.size()).boxed()
                .filter(k -> platforms.get(k).stream().anyMatch(board -> fits(part, board, shelves.request().classes().get(k).request())))
                .toList();
    }

    private boolean fits(Part part, Platform board, Request asked) {
        if (part instanceof Processor processor) {
            return SocketMatch.allows(board, processor);
        } else if (part instanceof MemoryModule module) {
            return MemoryGeneration.allows(board.memory(), module) && ModuleTypeTaken.allows(board.memory(), module.type());
        } else if (part instanceof CoolingKit kit) {
            // The same kit may cover other slots on another board.
            return board.cooling().stream().anyMatch(option -> option.sku().equals(kit.sku()));
        } else if (part instanceof Supply supply) {
            return board.power().supplies().stream().anyMatch(option -> option.sku().equals(supply.sku()))
                    || shelves.catalog().enclosures().stream().anyMatch(enclosure -> enclosure.takes(board)
                    && enclosure.supplies().stream().anyMatch(option -> option.sku().equals(supply.sku())));
        } else if (part instanceof Enclosure enclosure) {
            return enclosure.takes(board);
        } else if (part instanceof Drive) {
            return !asked.equipment().volumes().isEmpty();
        } else if (part instanceof Card) {
            return !asked.equipment().volumes().isEmpty() || !asked.equipment().cards().isEmpty();
        }
        return part.sku().equals(board.sku());
    }
}
