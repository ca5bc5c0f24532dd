package understudy.hunt;

import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Refused;
import understudy.trace.Hunt;
import understudy.trace.Place;

/** What a session waits for. Immutable. */
interface Stage {

    /** @throws IllegalStateException when nothing is asked any more */
    Question<HuntInput> question(Hunt hunt, HuntEquipment equipment);

    /**
     * The session after this was said.
     *
     * @param turn the session as it was, to be changed
     * @throws Refused for what does not go now
     */
    HuntSession after(HuntInput input, Turn turn);

    /** Where the signal plays meanwhile, and at which part of its level. */
    default Optional<Playing> playing() {
        return Optional.empty();
    }

    /** A signal that plays: where, and at which part of its level. */
    record Playing(Place place, double levelPart) {}

    /** This question, at which the words that go everywhere go too. */
    static Question<HuntInput> asking(String sentence, String why, Answers<HuntInput> own) {
        return new Question<>(sentence, why, new Answers.Beside<>(own, AsideWords::read, AsideWords.MEANINGS), Optional.empty());
    }

    /** Likewise with an answer for who types nothing. */
    static Question<HuntInput> asking(String sentence, String why, Answers<HuntInput> own, HuntInput otherwise) {
        return asking(sentence, why, own).otherwise(otherwise);
    }

    /** A question to which only Enter is an answer, so that no other word makes anything play. */
    static Question<HuntInput> enter(String sentence, String why) {
        return asking(sentence, why, new Answers.EmptyLine<>("press it alone; no other word plays"), new HuntInput.Done());
    }

    static Answers<HuntInput> yesNo(String yesMeans, String noMeans) {
        return new Answers.As<>(new Answers.YesNo(yesMeans, noMeans), HuntInput.Agreed::new);
    }

    /** For an input that does not belong here. */
    static Refused notAsked() {
        return new Refused("this is not what is asked now", "answer the question that is shown");
    }
}
