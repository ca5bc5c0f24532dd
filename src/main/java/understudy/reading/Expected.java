package understudy.reading;
import understudy.quantity.Unit;
public record Expected(double value, double low, double high, Unit unit) {
    public String words(double v) { return new understudy.quantity.Quantity(v, unit).rounded(4); }
}
