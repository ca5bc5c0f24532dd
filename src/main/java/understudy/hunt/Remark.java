package understudy.hunt;

import understudy.pattern.Hazard;

/** Something to be shown before the next question. */
public sealed interface Remark {

    /** A new thought begins. */
    record Gap() implements Remark {}

    record Sentence(String text) implements Remark {}

    /** One of a list. */
    record Item(String text) implements Remark {}

    /** One to be chosen by its number. */
    record Choice(int number, String text) implements Remark {}

    /** The cautions of the circuits' patterns in their own words. */
    record OwnCautions() implements Remark {}

    record Caution(Hazard hazard) implements Remark {}

    /** The readings that a finding rests on. */
    record Evidence() implements Remark {}

    /** The odds of each suspect. */
    record Suspects() implements Remark {}

    /** How the whole hunt stands: circuit, odds, steps. */
    record Standing() implements Remark {}

    /** A reading contradicts others. */
    record Contradiction(int number) implements Remark {}
}
