package sledwright.outside;

import static sledwright.samples.PlatformSketch.row;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;

import java.util.List;
import java.util.Set;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Thermal;

/**
 * The board that the facts of the trade are about (common practice, no source): two sockets, four channels of three slots each, DDR4
 * at 2400, a short heat sink up to 120 W and a long one that covers a slot of two channels of each socket. The enclosure feeds it.
 */
final class TradeBoard {

    static final CoolingKit SHORT = new CoolingKit("HS-68", "short heat sink, 68 mm", 120, List.of());
    static final CoolingKit LONG = new CoolingKit("HS-86", "long heat sink, 86 mm", 145, List.of("1C3", "1D3", "2C3", "2D3"));

    static final Platform PLATFORM = platform().sku("TRADE").maxTdpW(145).cooling(SHORT, LONG).supplies()
            .thermal(new Thermal(950, 300, List.of()))
            .speeds(row(ModuleType.RDIMM, Set.of(1, 2), 2400, 2400, 1866), row(ModuleType.RDIMM, Set.of(4), 2133, 1866, 1600),
                    row(ModuleType.LRDIMM, Set.of(), 2400, 2400, 2133))
            .make();

    static final Processor P85 = processor("P85").tdpW(85).make();
    static final Processor P120 = processor("P120").tdpW(120).cores(14).make();
    static final Processor P135 = processor("P135").tdpW(135).cores(16).make();
    static final Processor P145 = processor("P145").tdpW(145).cores(18).make();

    static final MemoryModule RDIMM_32 = module("R32-2400", 32).ranks(2).make();
    static final MemoryModule RDIMM_32_2666 = module("R32-2666", 32).ranks(2).mts(2666).make();
    static final MemoryModule RDIMM_32_FOUR_RANKS = module("Q32-2400", 32).ranks(4).make();
    static final MemoryModule LRDIMM_64 = module("L64-2400", 64).type(ModuleType.LRDIMM).ranks(4, 2).make();

    private TradeBoard() {
    }
}
