package org.papermath.equation;

/** Hours, posts and felts of a run of sheets; times in s. */
public final class Labour {
    /* Lets a whole count survive the rounding of a division. */
    private static final double HAIR = 1e-9;

    private Labour() {}

    /** Time for one post: form its sheets, press it, part the sheets from the felts. */
    public static double postTime(double sheets, double perSheet, double pressing, double partingPerSheet) {
        return sheets * perSheet + pressing + sheets * partingPerSheet;
    }

    /** Time for a run: full posts and a last one with the rest. */
    public static double runTime(
            long sheets, long sheetsPerPost, double perSheet, double pressing, double partingPerSheet) {
        return sheets * (perSheet + partingPerSheet) + posts(sheets, sheetsPerPost) * pressing;
    }

    /** Posts that a run needs. */
    public static long posts(long sheets, long sheetsPerPost) {
        return (sheets + sheetsPerPost - 1) / sheetsPerPost;
    }

    /** Whole posts that fit in a time. */
    public static long postsIn(double time, double postTime) {
        return (long) Math.floor(time / postTime + HAIR);
    }

    /** Whole sheets that fit in a time at an overall time for each. */
    public static long sheetsIn(double time, double overallPerSheet) {
        return (long) Math.floor(time / overallPerSheet + HAIR);
    }

    /** Overall time for each sheet of a post. */
    public static double overallPerSheet(double sheets, double perSheet, double pressing, double partingPerSheet) {
        return postTime(sheets, perSheet, pressing, partingPerSheet) / sheets;
    }

    /** Overall time for each sheet of a known output. */
    public static double pace(double time, double sheets) {
        return time / sheets;
    }
}
