package evenfall.bench.choose;

import java.util.ArrayList;
import java.util.List;

/**
 * Types whose sizes, changeovers and pressures are the same, so that they need saying once.
 *
 * @param cover what they share
 * @param members in the order of their rank, at least one
 */
record CoverGroup(Cover cover, List<Candidate> members) {
    static List<CoverGroup> of(Choice choice) {
        List<CoverGroup> groups = new ArrayList<>();
        for (Choice.Ranked one : choice.ranked()) {
            Cover cover = one.candidate().cover();
            if (cover == null) {
                continue;
            }
            CoverGroup found = null;
            for (CoverGroup group : groups) {
                if (group.cover.equals(cover)
                        && group.members.get(0).bar() == one.candidate().bar()) {
                    found = group;
                }
            }
            if (found == null) {
                found = new CoverGroup(cover, new ArrayList<>());
                groups.add(found);
            }
            found.members.add(one.candidate());
        }
        return groups;
    }

    Candidate first() {
        return members.get(0);
    }

    /** Ids of its members, in words. */
    String names() {
        List<String> ids = new ArrayList<>();
        for (Candidate member : members) {
            ids.add(member.type().id());
        }
        return String.join(", ", ids);
    }
}
