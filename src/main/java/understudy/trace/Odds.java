package understudy.trace;
final class Odds {
  static Odds of(double[] prior) { return new Odds(); }
  Odds after(int point, boolean good, double a, double b) { return this; }
  Odds after(double[] l) { return this; }
  double probability(int h) { return 0; }
}
