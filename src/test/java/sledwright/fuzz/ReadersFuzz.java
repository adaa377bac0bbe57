package sledwright.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;

/**
 * Searches, guided by coverage, for bytes that break a reader. Not part of a normal run, since the search rewrites every class that is
 * loaded; {@link CorpusTest} replays its inputs there. DEVELOPERS.md has the command. What is found is written beside the inputs.
 */
class ReadersFuzz {

    private static final String A_WHILE = "12s";

    @FuzzTest(maxDuration = A_WHILE)
    void shop(byte[] bytes) {
        Target.SHOP.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void platform(byte[] bytes) {
        Target.PLATFORM.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void enclosure(byte[] bytes) {
        Target.ENCLOSURE.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void table(byte[] bytes) {
        Target.TABLE.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void request(byte[] bytes) {
        Target.REQUEST.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void mapping(byte[] bytes) {
        Target.MAPPING.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void list(byte[] bytes) {
        Target.LIST.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void workbook(byte[] bytes) {
        Target.WORKBOOK.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void labels(byte[] bytes) {
        Target.LABELS.read(bytes);
    }

    @FuzzTest(maxDuration = A_WHILE)
    void spd(byte[] bytes) {
        Target.SPD.read(bytes);
    }
}
