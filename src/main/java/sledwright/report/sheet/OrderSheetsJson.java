package sledwright.report.sheet;

import java.util.List;
import java.util.Optional;
import sledwright.report.sheet.SheetView.WholeOrder;

/** What stands before the sheets of an order as JSON; empty where there is no order. */
public record OrderSheetsJson(List<FetchJson> lots, List<FrameJson> enclosures) {

    /** Units of one lot, and for whom they are. */
    public record FetchJson(String sku, String description, String lot, String supplier, int units,
                            List<ShareJson> shares) {

        private static FetchJson of(SheetView.Fetch fetch) {
            return new FetchJson(fetch.pick().sku(), fetch.pick().description(), fetch.pick().lot(), fetch.pick().supplier(),
                    fetch.pick().units(), fetch.shares().stream().map(ShareJson::of).toList());
        }
    }

    /** Machines of a line, or an enclosure: the other is null. */
    public record ShareJson(String line, Integer first, Integer last, Integer enclosure, int each) {

        private static ShareJson of(SheetView.Share share) {
            return share.line().map(line -> new ShareJson(line, share.first(), share.last(), null, share.each()))
                    .orElseGet(() -> new ShareJson(null, null, null, share.first(), share.each()));
        }
    }

    /** An enclosure and what goes into its bays. */
    public record FrameJson(int enclosure, String sku, String name, String supply, int supplies, List<SheetView.Seat> sleds) {

        private static FrameJson of(SheetView.Frame frame) {
            return new FrameJson(frame.number(), frame.sku(), frame.name(), frame.supply(), frame.supplies(), frame.sleds());
        }
    }

    static OrderSheetsJson of(Optional<WholeOrder> order) {
        return new OrderSheetsJson(order.map(WholeOrder::lots).orElse(List.of()).stream().map(FetchJson::of).toList(),
                order.map(WholeOrder::frames).orElse(List.of()).stream().map(FrameJson::of).toList());
    }
}
