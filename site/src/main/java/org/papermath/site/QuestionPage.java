package org.papermath.site;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.papermath.examples.questions.Asked;
import org.papermath.examples.questions.Questions;

/** The questions of the examples, each with the lines that answer it and the answer they give when the page is written. */
final class QuestionPage {
    /** What a theme is called in the menu of the page. */
    private static final Map<String, String> THEMES = themes();

    private QuestionPage() {}

    private static Map<String, String> themes() {
        Map<String, String> themes = new LinkedHashMap<>();
        themes.put("FibreQuestions", "Fibre and beating");
        themes.put("VatQuestions", "At the vat");
        themes.put("PressQuestions", "The sheet and the press");
        themes.put("DryingQuestions", "Drying and size");
        themes.put("StationeryQuestions", "Sizes, reams, envelopes, mail");
        themes.put("RecordQuestions", "Counts and records");
        themes.put("OrderQuestions", "Days, money, several colours");
        themes.put("ColourQuestions", "Colour");
        themes.put("SmallQuestions", "Small arithmetic");
        themes.put("CautionQuestions", "Slips that are refused, asked back or warned of");
        return themes;
    }

    /** All questions, by theme. */
    static String html() {
        Map<String, List<Asked>> byTheme = new LinkedHashMap<>();
        THEMES.keySet().forEach(theme -> byTheme.put(theme, new ArrayList<>()));
        for (Asked one : Questions.all()) {
            byTheme.computeIfAbsent(one.theme(), theme -> new ArrayList<>()).add(one);
        }
        StringBuilder out = new StringBuilder("<div class=\"questions\">\n");
        byTheme.forEach((theme, questions) -> {
            out.append("<h2 id=\"")
                    .append(theme.toLowerCase(Locale.ROOT))
                    .append("\">")
                    .append(THEMES.getOrDefault(theme, theme))
                    .append("</h2>\n");
            questions.forEach(one -> out.append(question(one)));
        });
        return out.append("</div>").toString();
    }

    private static String question(Asked one) {
        StringBuilder answer = new StringBuilder();
        one.answer().lines().forEach(line -> answer.append("> ").append(line).append('\n'));
        return "<div class=\"question\">\n<h3 id=\"" + one.number().toLowerCase(Locale.ROOT) + "\">"
                + Html.escape(one.asks()) + "</h3>\n"
                + Html.code(String.join("\n", one.lines()) + "\n\n" + answer) + "\n<small>" + one.number()
                + ", also found by: " + Html.escape(one.words()) + "</small>\n</div>\n";
    }

    /** {@return how many there are} */
    static int count() {
        return Questions.all().size();
    }
}
