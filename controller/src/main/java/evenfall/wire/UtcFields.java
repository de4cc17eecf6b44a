package evenfall.wire;

/** UTC time of day and date as receivers print them: {@code hhmmss.sss} and {@code ddmmyy}. */
final class UtcFields {

    private static final long DAY_MS = 86_400_000L;

    private boolean hasTime;
    private boolean hasDate;
    private int timeOfDayMs;
    private int epochDay;

    void clear() {
        hasTime = false;
        hasDate = false;
    }

    boolean hasTime() {
        return hasTime;
    }

    boolean hasDateAndTime() {
        return hasTime && hasDate;
    }

    /** Milliseconds since midnight UTC; up to one second past the day's end in a leap second. */
    int timeOfDayMs() {
        return timeOfDayMs;
    }

    long epochMs() {
        return epochDay * DAY_MS + timeOfDayMs;
    }

    /** Reads the time; parts of a millisecond are cut off. */
    void readTime(Fields fields) {
        if (!fields.unsigned()) {
            return;
        }
        int clock = (int) fields.wholePart();
        int hour = clock / 10_000;
        int minute = clock / 100 % 100;
        int second = clock % 100;
        if (fields.wholeDigits() != 6 || hour > 23 || minute > 59 || second > 60) {
            fields.refuse();
            return;
        }
        int fractionMs = (int) (fields.fraction() * 1000 / fields.scale());
        timeOfDayMs = ((hour * 60 + minute) * 60 + second) * 1000 + fractionMs;
        hasTime = true;
    }

    /**
     * Reads the date; years 80 to 99 are of the last century, since GPS began in 1980. Some receivers print all zeros
     * while they do not know it.
     */
    void readDate(Fields fields) {
        if (!fields.whole(999_999)) {
            return;
        }
        int digits = (int) fields.mantissa();
        if (digits == 0 && fields.wholeDigits() == 6) {
            return;
        }
        int day = digits / 10_000;
        int month = digits / 100 % 100;
        int shortYear = digits % 100;
        int year = shortYear >= 80 ? 1900 + shortYear : 2000 + shortYear;
        if (fields.wholeDigits() != 6 || month < 1 || month > 12 || day < 1 || day > daysIn(month, year)) {
            fields.refuse();
            return;
        }
        epochDay = epochDay(year, month, day);
        hasDate = true;
    }

    private static int daysIn(int month, int year) {
        return switch (month) {
            case 2 -> year % 4 == 0 ? 29 : 28; // right from 1980 to 2079: 2000 was a leap year
            case 4, 6, 9, 11 -> 30;
            default -> 31;
        };
    }

    /** Days since 1970-01-01 in the years 1980 to 2079, where every fourth year is a leap year. */
    private static int epochDay(int year, int month, int day) {
        int sinceMarch = (month + 9) % 12;
        int marchYear = month < 3 ? year - 1 : year;
        int daysBeforeMonth = (153 * sinceMarch + 2) / 5;
        // 1968-03-01 was day -671: years run from March so that the leap day comes last.
        int years = marchYear - 1968;
        return years * 365 + years / 4 + daysBeforeMonth + day - 1 - 671;
    }
}
