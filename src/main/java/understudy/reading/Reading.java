package understudy.reading;
public interface Reading { Expected expected(double frequencyHz); }
