package offtape.report.render;

import java.util.ArrayList;
import java.util.List;

/** Reads what stands for the values of a curve, written apart from the page's own script. */
final class Unpacked {

    private Unpacked() {}

    /** Five bits a letter of the alphabet of RFC 4648, the lowest first; 2n is n, 2n − 1 is −n. */
    static List<Long> of(String text) {
        List<Long> values = new ArrayList<>();
        long value = 0;
        long bits = 0;
        int shift = 0;
        for (char letter : text.toCharArray()) {
            int index = index(letter);
            bits |= (long) (index & 31) << shift;
            shift += 5;
            if ((index & 32) == 0) {
                value += (bits & 1) == 0 ? bits >> 1 : -((bits + 1) >> 1);
                values.add(value);
                bits = 0;
                shift = 0;
            }
        }
        return values;
    }

    private static int index(char letter) {
        if (letter >= 'A' && letter <= 'Z') {
            return letter - 'A';
        }
        if (letter >= 'a' && letter <= 'z') {
            return 26 + letter - 'a';
        }
        if (letter >= '0' && letter <= '9') {
            return 52 + letter - '0';
        }
        return letter == '+' ? 62 : 63;
    }
}
