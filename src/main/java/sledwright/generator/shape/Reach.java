package sledwright.generator.shape;

import sledwright.generator.draw.Hands;

/** What can be reached with the stacks added so far. */
interface Reach {

    /** Takes a vector of counts that a channel capacity just made possible, or better. */
    interface Found {
        void accept(int number, double sparedGb);
    }

    /** Lets any number of channels hold one more stack, no smaller than those before. */
    void add(Stack stack);

    /** Hands out each vector whose figures improved since the last call. */
    void forEachNew(Found found);
}
