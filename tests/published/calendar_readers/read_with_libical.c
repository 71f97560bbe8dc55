/* Reads calendar files with libical and prints "UID START END ALARM..." of entries and tasks, a blank line
 * after each file; times in seconds since 1970, alarms in seconds after the start. Every fault libical marks is printed as "ERROR ...". Usage: read_with_libical FILE... */
#include <libical/ical.h>
#include <stdio.h>
#include <stdlib.h>

static char *content(const char *name)
{
    FILE *file = fopen(name, "rb");
    if (!file || fseek(file, 0, SEEK_END) != 0) {
        exit(2);
    }
    long length = ftell(file);
    rewind(file);
    char *text = calloc((size_t)length + 1, 1);
    if (!text || fread(text, 1, (size_t)length, file) != (size_t)length) {
        exit(2);
    }
    fclose(file);
    return text;
}

static long long seconds(icaltimetype time)
{
    return (long long)icaltime_as_timet_with_zone(time, time.zone);
}

static void print_faults(icalcomponent *component)
{
    icalproperty *fault = icalcomponent_get_first_property(component, ICAL_XLICERROR_PROPERTY);
    for (; fault; fault = icalcomponent_get_next_property(component, ICAL_XLICERROR_PROPERTY)) {
        printf("ERROR %s\n", icalproperty_get_xlicerror(fault));
    }
    icalcomponent *inner = icalcomponent_get_first_component(component, ICAL_ANY_COMPONENT);
    for (; inner; inner = icalcomponent_get_next_component(component, ICAL_ANY_COMPONENT)) {
        print_faults(inner);
    }
}

static void print_all(icalcomponent *calendar, icalcomponent_kind kind)
{
    icalcomponent *one = icalcomponent_get_first_component(calendar, kind);
    for (; one; one = icalcomponent_get_next_component(calendar, kind)) {
        icaltimetype end = kind == ICAL_VTODO_COMPONENT ? icalcomponent_get_due(one) : icalcomponent_get_dtend(one);
        printf("%s %lld %lld", icalcomponent_get_uid(one), seconds(icalcomponent_get_dtstart(one)), seconds(end));
        icalcomponent *alarm = icalcomponent_get_first_component(one, ICAL_VALARM_COMPONENT);
        for (; alarm; alarm = icalcomponent_get_next_component(one, ICAL_VALARM_COMPONENT)) {
            icalproperty *trigger = icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY);
            printf(" %d", icaldurationtype_as_int(icalproperty_get_trigger(trigger).duration));
        }
        printf("\n");
    }
}

int main(int count, char **names)
{
    for (int i = 1; i < count; i++) {
        char *text = content(names[i]);
        icalcomponent *calendar = icalparser_parse_string(text);
        if (!calendar) {
            printf("ERROR not a calendar\n\n");
            free(text);
            continue;
        }
        icalrestriction_check(calendar);
        print_faults(calendar);
        print_all(calendar, ICAL_VEVENT_COMPONENT);
        print_all(calendar, ICAL_VTODO_COMPONENT);
        printf("\n");
        icalcomponent_free(calendar);
        free(text);
    }
    return 0;
}
