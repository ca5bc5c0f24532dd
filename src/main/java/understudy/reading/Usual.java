package understudy.reading;

/** Tolerances where none is declared. All are usual in the trade and unchecked; a learned scale is better than any of them. */
final class Usual {

    /** A tyre's load, pressure and wear move its circumference by 1 to 3 %. */
    private static final double TYRE_PERCENT = 3;
    /** Known counts and a quartz clock leave little; what the module averages moves while it is read. */
    private static final double COUNTED_PERCENT = 1;
    /** Printed tables of sensors are coarse: part of the whole span. */
    private static final double TABLE_SPAN_PERCENT = 3;

    private Usual() {}

    static Tolerance tolerance(Scale scale, DisplayUnit unit) {
        if (scale instanceof Scale.Rolling) {
            return new Tolerance(TYRE_PERCENT, 0);
        }
        if (scale instanceof Scale.Points table) {
            return new Tolerance(0, unit.fromBase(table.spanBase()) * TABLE_SPAN_PERCENT / 100);
        }
        return new Tolerance(COUNTED_PERCENT, 0);
    }
}
