package understudy.rig;

/** Settles what each part really is, within its tolerance. */
interface Pick {
    double of(Spread spread);

    /** For what couples: capacitors in the signal's way, and a transformer's inductance. */
    double ofCoupling(Spread spread);

    /** For capacitors to ground. */
    double ofFilter(Spread spread);

    default Spread settle(Spread spread) {
        return Spread.exactly(of(spread));
    }

    default Spread settleCoupling(Spread spread) {
        return Spread.exactly(ofCoupling(spread));
    }

    default Spread settleFilter(Spread spread) {
        return Spread.exactly(ofFilter(spread));
    }
}
