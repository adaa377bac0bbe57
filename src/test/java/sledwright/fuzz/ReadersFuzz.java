package sledwright.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;

/**
 * Searches, guided by coverage, for bytes that break a reader, each in a process of its own. Not part of a normal run, since the search rewrites
 * every class that is loaded; {@link CorpusTest} replays its inputs there. DEVELOPERS.md has the command. What is found is written beside the inputs.
 */
final class ReadersFuzz {

    private ReadersFuzz() {
    }

    /** A search for what breaks one reader, with inputs in a folder of the search's name. */
    abstract static class Search {

        private final Target target;

        private Search(Target target) {
            this.target = target;
        }

        @FuzzTest(maxDuration = "6s")
        void bytes(byte[] bytes) {
            target.read(bytes);
        }
    }

    static final class Shop extends Search {
        Shop() {
            super(Target.SHOP);
        }
    }

    static final class Platform extends Search {
        Platform() {
            super(Target.PLATFORM);
        }
    }

    static final class Enclosure extends Search {
        Enclosure() {
            super(Target.ENCLOSURE);
        }
    }

    static final class Table extends Search {
        Table() {
            super(Target.TABLE);
        }
    }

    static final class Request extends Search {
        Request() {
            super(Target.REQUEST);
        }
    }

    static final class Mapping extends Search {
        Mapping() {
            super(Target.MAPPING);
        }
    }

    static final class List extends Search {
        List() {
            super(Target.LIST);
        }
    }

    static final class Workbook extends Search {
        Workbook() {
            super(Target.WORKBOOK);
        }
    }

    static final class Labels extends Search {
        Labels() {
            super(Target.LABELS);
        }
    }

    static final class Spd extends Search {
        Spd() {
            super(Target.SPD);
        }
    }
}
