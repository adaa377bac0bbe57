package sledwright.words;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;

/** Items of a list that stand together since each goes on from the one before. */
public final class Runs {

    private Runs() {
    }

    /** @param follows whether the second goes on from the first, which is the one before it */
    public static <T> List<List<T>> of(List<T> items, BiPredicate<T, T> follows) {
        List<List<T>> runs = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            if (i == 0 || !follows.test(items.get(i - 1), items.get(i))) {
                runs.add(new ArrayList<>());
            }
            runs.get(runs.size() - 1).add(items.get(i));
        }
        return runs;
    }
}
