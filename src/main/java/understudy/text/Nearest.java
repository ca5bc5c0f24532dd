package understudy.text;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** The known names that a mistyped one was probably meant to be. */
public final class Nearest {

    private Nearest() {}

    /** Those known names that are close enough to be meant, nearest first. */
    public static List<String> to(String typed, Collection<String> known) {
        String lower = typed.toLowerCase(Locale.ROOT);
        return known.stream()
                .filter(name -> close(lower, name))
                .sorted(Comparator.comparingInt((String name) -> distance(lower, name)).thenComparing(name -> name))
                .toList();
    }

    private static boolean close(String typed, String name) {
        int allowed = Math.max(1, Math.min(typed.length(), name.length()) / 3);
        return Math.abs(typed.length() - name.length()) <= allowed && distance(typed, name) <= allowed;
    }

    /** "did you mean "teeth"?", or all there is to choose from. */
    public static String advice(String typed, Collection<String> known) {
        List<String> near = to(typed, known);
        return near.isEmpty() ? "known here: " + String.join(", ", known) : "did you mean \"" + near.get(0) + "\"?";
    }

    /** Letters to insert, delete, change or swap with their neighbour (optimal string alignment). */
    public static int distance(String a, String b) {
        int[][] cost = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    cost[i][j] = i + j;
                    continue;
                }
                int change = cost[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                cost[i][j] = Math.min(change, 1 + Math.min(cost[i - 1][j], cost[i][j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    cost[i][j] = Math.min(cost[i][j], cost[i - 2][j - 2] + 1);
                }
            }
        }
        return cost[a.length()][b.length()];
    }
}
